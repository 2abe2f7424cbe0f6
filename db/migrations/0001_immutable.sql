-- A signed edition and the record of a plan are written once. The database itself refuses anything else, so that no
-- mistake of the program can alter what somebody signed. The insert triggers stop a replacing insert, which would
-- otherwise pass the delete triggers by.
CREATE TRIGGER `edition_never_updated` BEFORE UPDATE ON `edition`
BEGIN SELECT RAISE(ABORT, 'a signed edition is never changed'); END;
--> statement-breakpoint
CREATE TRIGGER `edition_never_deleted` BEFORE DELETE ON `edition`
BEGIN SELECT RAISE(ABORT, 'a signed edition is never deleted'); END;
--> statement-breakpoint
CREATE TRIGGER `edition_never_replaced` BEFORE INSERT ON `edition`
WHEN EXISTS (SELECT 1 FROM `edition` WHERE `plan_id` = NEW.`plan_id` AND `number` = NEW.`number`)
BEGIN SELECT RAISE(ABORT, 'a signed edition is never replaced'); END;
--> statement-breakpoint
CREATE TRIGGER `plan_event_never_updated` BEFORE UPDATE ON `plan_event`
BEGIN SELECT RAISE(ABORT, 'the record of a plan is only added to'); END;
--> statement-breakpoint
CREATE TRIGGER `plan_event_never_deleted` BEFORE DELETE ON `plan_event`
BEGIN SELECT RAISE(ABORT, 'the record of a plan is only added to'); END;
--> statement-breakpoint
CREATE TRIGGER `plan_event_never_replaced` BEFORE INSERT ON `plan_event`
WHEN EXISTS (SELECT 1 FROM `plan_event` WHERE `id` = NEW.`id`)
BEGIN SELECT RAISE(ABORT, 'the record of a plan is only added to'); END;
