CREATE TABLE `edition_withdrawal` (
	`plan_id` text NOT NULL,
	`number` integer NOT NULL,
	`withdrawn_by` text NOT NULL,
	`withdrawn_at` integer NOT NULL,
	`reason` text NOT NULL,
	PRIMARY KEY(`plan_id`, `number`)
);
--> statement-breakpoint
ALTER TABLE `plan` ADD `archived_at` integer;