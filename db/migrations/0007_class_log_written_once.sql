-- What a class did is told once, like the other records: the database itself refuses to change, delete or replace it.
CREATE TRIGGER `class_log_never_updated` BEFORE UPDATE ON `class_log`
BEGIN SELECT RAISE(ABORT, 'a class log is never changed'); END;
--> statement-breakpoint
CREATE TRIGGER `class_log_never_deleted` BEFORE DELETE ON `class_log`
BEGIN SELECT RAISE(ABORT, 'a class log is never deleted'); END;
--> statement-breakpoint
CREATE TRIGGER `class_log_never_replaced` BEFORE INSERT ON `class_log`
WHEN EXISTS (SELECT 1 FROM `class_log` WHERE `session_id` = NEW.`session_id`)
BEGIN SELECT RAISE(ABORT, 'a class log is never replaced'); END;
