ALTER TABLE `comment` ADD `as_lead` integer DEFAULT false NOT NULL;--> statement-breakpoint
-- What people were when they wrote is not known: who is a lead now counts as one who was.
UPDATE `comment` SET `as_lead` = 1 WHERE `author_id` IN (
  SELECT `user_id` FROM `member` WHERE ',' || replace(`role`, ' ', '') || ',' LIKE '%,lead,%'
);
