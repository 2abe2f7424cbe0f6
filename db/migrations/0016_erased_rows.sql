-- When somebody's account is deleted for good, rows of the record that name them lose their words and nothing else: the hash that
-- the next row holds stays, and the row that tells of the deletion names what was erased (lib/record/erased.ts).
DROP TRIGGER `record_never_updated`;
--> statement-breakpoint
CREATE TRIGGER `record_never_updated` BEFORE UPDATE ON `record`
WHEN NOT (
  NEW.`body_json` = '{"erased":true}'
  AND OLD.`kind` IN ('invited', 'invitation-revoked', 'name-changed', 'email-changed')
  AND NEW.`seq` = OLD.`seq` AND NEW.`at` = OLD.`at` AND NEW.`actor_id` = OLD.`actor_id` AND NEW.`subject` = OLD.`subject`
  AND NEW.`kind` = OLD.`kind` AND NEW.`previous_hash` = OLD.`previous_hash` AND NEW.`hash` = OLD.`hash`
)
BEGIN SELECT RAISE(ABORT, 'the record is only added to'); END;
--> statement-breakpoint
-- Signing in takes a while: an account that was deleted meanwhile gets no session.
CREATE TRIGGER `session_of_an_account` BEFORE INSERT ON `session`
WHEN NOT EXISTS (SELECT 1 FROM `account` WHERE `user_id` = NEW.`user_id`)
BEGIN SELECT RAISE(IGNORE); END;
