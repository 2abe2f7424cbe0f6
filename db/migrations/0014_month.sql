CREATE TABLE `calendar_feed` (
	`id` text PRIMARY KEY NOT NULL,
	`kind` text NOT NULL,
	`subject` text NOT NULL,
	`secret_hash` text NOT NULL,
	`made_by` text NOT NULL,
	`made_at` integer NOT NULL,
	`withdrawn_by` text,
	`withdrawn_at` integer,
	`last_read_at` integer
);
--> statement-breakpoint
CREATE UNIQUE INDEX `calendar_feed_secret` ON `calendar_feed` (`secret_hash`);--> statement-breakpoint
CREATE TABLE `class_log_remark` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`session_id` text NOT NULL,
	`kind` text NOT NULL,
	`coach_id` text,
	`reason` text,
	`actor_id` text NOT NULL,
	`at` integer NOT NULL
);
--> statement-breakpoint
CREATE INDEX `class_log_remark_session` ON `class_log_remark` (`session_id`);--> statement-breakpoint
CREATE TABLE `month_acceptance` (
	`id` text PRIMARY KEY NOT NULL,
	`month` text NOT NULL,
	`rule` text NOT NULL,
	`finding_id` text NOT NULL,
	`finding_key` text NOT NULL,
	`message` text NOT NULL,
	`reason` text NOT NULL,
	`accepted_by` text NOT NULL,
	`accepted_at` integer NOT NULL,
	`undone_by` text,
	`undone_at` integer
);
--> statement-breakpoint
CREATE INDEX `month_acceptance_month` ON `month_acceptance` (`month`);--> statement-breakpoint
CREATE TABLE `month_edition` (
	`month` text NOT NULL,
	`number` integer NOT NULL,
	`hash` text NOT NULL,
	`file_json` text NOT NULL,
	`findings_json` text NOT NULL,
	`accepted_json` text NOT NULL,
	`signed_by` text NOT NULL,
	`signed_at` integer NOT NULL,
	`note` text,
	PRIMARY KEY(`month`, `number`)
);
--> statement-breakpoint
CREATE TABLE `month_reading` (
	`month` text NOT NULL,
	`user_id` text NOT NULL,
	`hash` text NOT NULL,
	`file_json` text NOT NULL,
	`at` integer NOT NULL,
	PRIMARY KEY(`month`, `user_id`, `hash`)
);
--> statement-breakpoint
CREATE TRIGGER `month_edition_never_updated` BEFORE UPDATE ON `month_edition`
BEGIN SELECT RAISE(ABORT, 'a signed month never changes'); END;
--> statement-breakpoint
CREATE TRIGGER `month_edition_never_deleted` BEFORE DELETE ON `month_edition`
BEGIN SELECT RAISE(ABORT, 'a signed month never changes'); END;
--> statement-breakpoint
CREATE TRIGGER `month_edition_never_replaced` BEFORE INSERT ON `month_edition`
WHEN EXISTS (SELECT 1 FROM `month_edition` WHERE `month` = NEW.`month` AND `number` = NEW.`number`)
BEGIN SELECT RAISE(ABORT, 'a signed month never changes'); END;
--> statement-breakpoint
CREATE TRIGGER `class_log_remark_never_updated` BEFORE UPDATE ON `class_log_remark`
BEGIN SELECT RAISE(ABORT, 'remarks on a class log are only added to'); END;
--> statement-breakpoint
CREATE TRIGGER `class_log_remark_never_deleted` BEFORE DELETE ON `class_log_remark`
BEGIN SELECT RAISE(ABORT, 'remarks on a class log are only added to'); END;
--> statement-breakpoint
CREATE TRIGGER `class_log_remark_never_replaced` BEFORE INSERT ON `class_log_remark`
WHEN EXISTS (SELECT 1 FROM `class_log_remark` WHERE `id` = NEW.`id`)
BEGIN SELECT RAISE(ABORT, 'remarks on a class log are only added to'); END;
