-- A plan that was ever signed is archived, never deleted; a withdrawal is written once, of an edition that there is. The
-- database itself refuses anything else.
CREATE TRIGGER `plan_signed_never_marked_deleted` BEFORE UPDATE OF `deleted_at` ON `plan`
WHEN OLD.`deleted_at` IS NULL AND NEW.`deleted_at` IS NOT NULL
  AND EXISTS (SELECT 1 FROM `edition` WHERE `plan_id` = NEW.`id`)
BEGIN SELECT RAISE(ABORT, 'a signed plan is never deleted'); END;
--> statement-breakpoint
CREATE TRIGGER `plan_signed_never_deleted` BEFORE DELETE ON `plan`
WHEN EXISTS (SELECT 1 FROM `edition` WHERE `plan_id` = OLD.`id`)
BEGIN SELECT RAISE(ABORT, 'a signed plan is never deleted'); END;
--> statement-breakpoint
CREATE TRIGGER `edition_withdrawal_of_an_edition` BEFORE INSERT ON `edition_withdrawal`
WHEN NOT EXISTS (SELECT 1 FROM `edition` WHERE `plan_id` = NEW.`plan_id` AND `number` = NEW.`number`)
BEGIN SELECT RAISE(ABORT, 'there is no such edition to withdraw'); END;
--> statement-breakpoint
CREATE TRIGGER `edition_withdrawal_never_updated` BEFORE UPDATE ON `edition_withdrawal`
BEGIN SELECT RAISE(ABORT, 'a withdrawal is never changed'); END;
--> statement-breakpoint
CREATE TRIGGER `edition_withdrawal_never_deleted` BEFORE DELETE ON `edition_withdrawal`
BEGIN SELECT RAISE(ABORT, 'a withdrawal is never deleted'); END;
--> statement-breakpoint
CREATE TRIGGER `edition_withdrawal_never_replaced` BEFORE INSERT ON `edition_withdrawal`
WHEN EXISTS (SELECT 1 FROM `edition_withdrawal` WHERE `plan_id` = NEW.`plan_id` AND `number` = NEW.`number`)
BEGIN SELECT RAISE(ABORT, 'a withdrawal is never replaced'); END;
