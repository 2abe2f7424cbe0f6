CREATE TABLE `acceptance` (
	`id` text PRIMARY KEY NOT NULL,
	`plan_id` text NOT NULL,
	`rule_id` text NOT NULL,
	`finding_key` text NOT NULL,
	`message` text NOT NULL,
	`reason` text NOT NULL,
	`by_id` text NOT NULL,
	`at` integer NOT NULL,
	`ended_by` text,
	`ended_at` integer
);
--> statement-breakpoint
CREATE INDEX `acceptance_plan` ON `acceptance` (`plan_id`);--> statement-breakpoint
CREATE TABLE `class_log_seen` (
	`session_id` text NOT NULL,
	`user_id` text NOT NULL,
	`at` integer NOT NULL,
	PRIMARY KEY(`session_id`, `user_id`)
);
--> statement-breakpoint
CREATE TABLE `desk_visit` (
	`user_id` text PRIMARY KEY NOT NULL,
	`at` integer NOT NULL,
	`before` integer NOT NULL
);
--> statement-breakpoint
CREATE TABLE `mail` (
	`id` text PRIMARY KEY NOT NULL,
	`user_id` text NOT NULL,
	`notices_json` text NOT NULL,
	`made_at` integer NOT NULL,
	`attempts` integer DEFAULT 0 NOT NULL,
	`next_at` integer NOT NULL,
	`sent_at` integer,
	`problem` text,
	`failed_at` integer
);
--> statement-breakpoint
CREATE INDEX `mail_waiting` ON `mail` (`sent_at`,`next_at`);--> statement-breakpoint
CREATE TABLE `marks` (
	`id` text PRIMARY KEY NOT NULL,
	`user_id` text NOT NULL,
	`plan_id` text NOT NULL,
	`round` integer,
	`session_id` text,
	`by_id` text NOT NULL,
	`at` integer NOT NULL,
	`rubric_json` text NOT NULL,
	`levels_json` text NOT NULL,
	`sentence` text NOT NULL
);
--> statement-breakpoint
CREATE INDEX `marks_user` ON `marks` (`user_id`);--> statement-breakpoint
CREATE INDEX `marks_plan` ON `marks` (`plan_id`);--> statement-breakpoint
CREATE TABLE `mention` (
	`comment_id` text NOT NULL,
	`user_id` text NOT NULL,
	`thread_id` text NOT NULL,
	`seen_at` integer,
	PRIMARY KEY(`comment_id`, `user_id`)
);
--> statement-breakpoint
CREATE INDEX `mention_user` ON `mention` (`user_id`,`seen_at`);--> statement-breakpoint
CREATE TABLE `notice_choice` (
	`user_id` text PRIMARY KEY NOT NULL,
	`digest_at` text,
	`time_zone` text DEFAULT 'UTC' NOT NULL,
	`kinds_json` text DEFAULT '{}' NOT NULL,
	`digest_sent_at` integer
);
--> statement-breakpoint
CREATE TABLE `notice` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`user_id` text NOT NULL,
	`at` integer NOT NULL,
	`kind` text NOT NULL,
	`plan_id` text,
	`data_json` text NOT NULL,
	`seen_at` integer,
	`mailed_at` integer
);
--> statement-breakpoint
CREATE INDEX `notice_user` ON `notice` (`user_id`,`id`);--> statement-breakpoint
CREATE TABLE `plan_moment` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`plan_id` text NOT NULL,
	`round` integer NOT NULL,
	`kind` text NOT NULL,
	`at` integer NOT NULL,
	`actor_id` text NOT NULL,
	`note` text,
	`hash` text NOT NULL,
	`findings_json` text NOT NULL,
	`threads_json` text NOT NULL
);
--> statement-breakpoint
CREATE INDEX `plan_moment_plan` ON `plan_moment` (`plan_id`,`id`);--> statement-breakpoint
CREATE TABLE `plan_round` (
	`plan_id` text NOT NULL,
	`number` integer NOT NULL,
	`offered_by` text NOT NULL,
	`offered_at` integer NOT NULL,
	`reader_id` text,
	`read_since` integer,
	`outcome` text,
	`ended_by` text,
	`ended_at` integer,
	`main_points_json` text DEFAULT '[]' NOT NULL,
	`edition` integer,
	PRIMARY KEY(`plan_id`, `number`)
);
--> statement-breakpoint
CREATE TABLE `plan_text` (
	`plan_id` text NOT NULL,
	`hash` text NOT NULL,
	`plan_json` text NOT NULL,
	PRIMARY KEY(`plan_id`, `hash`)
);
--> statement-breakpoint
CREATE TABLE `plate_read` (
	`plan_id` text NOT NULL,
	`user_id` text NOT NULL,
	`item_id` text NOT NULL,
	`hash` text NOT NULL,
	`at` integer NOT NULL,
	PRIMARY KEY(`plan_id`, `user_id`, `item_id`)
);
--> statement-breakpoint
CREATE TABLE `proposal` (
	`id` text PRIMARY KEY NOT NULL,
	`plan_id` text NOT NULL,
	`item_id` text,
	`by_id` text NOT NULL,
	`at` integer NOT NULL,
	`note` text,
	`parts_json` text NOT NULL,
	`state` text DEFAULT 'open' NOT NULL,
	`taken_json` text,
	`ended_by` text,
	`ended_at` integer,
	`word` text
);
--> statement-breakpoint
CREATE INDEX `proposal_plan` ON `proposal` (`plan_id`);--> statement-breakpoint
CREATE TABLE `record` (
	`seq` integer PRIMARY KEY NOT NULL,
	`at` integer NOT NULL,
	`actor_id` text NOT NULL,
	`subject` text NOT NULL,
	`kind` text NOT NULL,
	`body_json` text NOT NULL,
	`previous_hash` text NOT NULL,
	`hash` text NOT NULL
);
--> statement-breakpoint
CREATE INDEX `record_subject` ON `record` (`subject`,`seq`);--> statement-breakpoint
CREATE UNIQUE INDEX `record_hash` ON `record` (`hash`);--> statement-breakpoint
CREATE TABLE `remark` (
	`id` text PRIMARY KEY NOT NULL,
	`words` text NOT NULL,
	`rule_id` text,
	`move_id` text,
	`created_by` text NOT NULL,
	`updated_at` integer NOT NULL,
	`archived_at` integer
);
--> statement-breakpoint
CREATE TABLE `studio_setting` (
	`name` text PRIMARY KEY NOT NULL,
	`data_json` text NOT NULL,
	`updated_at` integer NOT NULL
);
--> statement-breakpoint
ALTER TABLE `edition` ADD `accepted_json` text;--> statement-breakpoint
ALTER TABLE `edition` ADD `round` integer;--> statement-breakpoint
ALTER TABLE `plan` ADD `origin` text;--> statement-breakpoint
-- Moments, texts, marks and the record are only added to: the database itself refuses anything else. The insert triggers
-- stop a replacing insert, which would otherwise pass the delete triggers by.
CREATE TRIGGER `plan_text_never_updated` BEFORE UPDATE ON `plan_text`
BEGIN SELECT RAISE(ABORT, 'the text of a moment is never changed'); END;
--> statement-breakpoint
CREATE TRIGGER `plan_text_never_deleted` BEFORE DELETE ON `plan_text`
BEGIN SELECT RAISE(ABORT, 'the text of a moment is never deleted'); END;
--> statement-breakpoint
CREATE TRIGGER `plan_text_never_replaced` BEFORE INSERT ON `plan_text`
WHEN EXISTS (SELECT 1 FROM `plan_text` WHERE `plan_id` = NEW.`plan_id` AND `hash` = NEW.`hash`)
BEGIN SELECT RAISE(ABORT, 'the text of a moment is never changed'); END;
--> statement-breakpoint
CREATE TRIGGER `plan_moment_never_updated` BEFORE UPDATE ON `plan_moment`
BEGIN SELECT RAISE(ABORT, 'the moments of a round are only added to'); END;
--> statement-breakpoint
CREATE TRIGGER `plan_moment_never_deleted` BEFORE DELETE ON `plan_moment`
BEGIN SELECT RAISE(ABORT, 'the moments of a round are only added to'); END;
--> statement-breakpoint
CREATE TRIGGER `plan_moment_never_replaced` BEFORE INSERT ON `plan_moment`
WHEN EXISTS (SELECT 1 FROM `plan_moment` WHERE `id` = NEW.`id`)
BEGIN SELECT RAISE(ABORT, 'the moments of a round are only added to'); END;
--> statement-breakpoint
CREATE TRIGGER `marks_never_updated` BEFORE UPDATE ON `marks`
BEGIN SELECT RAISE(ABORT, 'marks are only added to'); END;
--> statement-breakpoint
CREATE TRIGGER `marks_never_deleted` BEFORE DELETE ON `marks`
BEGIN SELECT RAISE(ABORT, 'marks are only added to'); END;
--> statement-breakpoint
CREATE TRIGGER `marks_never_replaced` BEFORE INSERT ON `marks`
WHEN EXISTS (SELECT 1 FROM `marks` WHERE `id` = NEW.`id`)
BEGIN SELECT RAISE(ABORT, 'marks are only added to'); END;
--> statement-breakpoint
CREATE TRIGGER `record_never_updated` BEFORE UPDATE ON `record`
BEGIN SELECT RAISE(ABORT, 'the record is only added to'); END;
--> statement-breakpoint
CREATE TRIGGER `record_never_deleted` BEFORE DELETE ON `record`
BEGIN SELECT RAISE(ABORT, 'the record is only added to'); END;
--> statement-breakpoint
CREATE TRIGGER `record_only_at_its_end` BEFORE INSERT ON `record`
WHEN NEW.`seq` <> (SELECT coalesce(max(`seq`), 0) + 1 FROM `record`)
BEGIN SELECT RAISE(ABORT, 'the record is only added to'); END;
