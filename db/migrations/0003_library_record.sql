-- A move may be taken out of the library, never deleted: plans that use it must go on reading it. The record of the
-- library is only added to; the insert trigger stops a replacing insert, which would pass the delete trigger by.
CREATE TRIGGER `move_never_deleted` BEFORE DELETE ON `move`
BEGIN SELECT RAISE(ABORT, 'a move is taken out of the library, never deleted'); END;
--> statement-breakpoint
CREATE TRIGGER `move_event_never_updated` BEFORE UPDATE ON `move_event`
BEGIN SELECT RAISE(ABORT, 'the record of the library is only added to'); END;
--> statement-breakpoint
CREATE TRIGGER `move_event_never_deleted` BEFORE DELETE ON `move_event`
BEGIN SELECT RAISE(ABORT, 'the record of the library is only added to'); END;
--> statement-breakpoint
CREATE TRIGGER `move_event_never_replaced` BEFORE INSERT ON `move_event`
WHEN EXISTS (SELECT 1 FROM `move_event` WHERE `id` = NEW.`id`)
BEGIN SELECT RAISE(ABORT, 'the record of the library is only added to'); END;
