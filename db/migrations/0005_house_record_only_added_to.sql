-- The house's record says who changed which standard and which machine: like the other records it is only added to.
CREATE TRIGGER `studio_event_never_updated` BEFORE UPDATE ON `studio_event`
BEGIN SELECT RAISE(ABORT, 'the record of the house is only added to'); END;
--> statement-breakpoint
CREATE TRIGGER `studio_event_never_deleted` BEFORE DELETE ON `studio_event`
BEGIN SELECT RAISE(ABORT, 'the record of the house is only added to'); END;
--> statement-breakpoint
CREATE TRIGGER `studio_event_never_replaced` BEFORE INSERT ON `studio_event`
WHEN EXISTS (SELECT 1 FROM `studio_event` WHERE `id` = NEW.`id`)
BEGIN SELECT RAISE(ABORT, 'the record of the house is only added to'); END;
