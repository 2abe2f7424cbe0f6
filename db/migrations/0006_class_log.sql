CREATE TABLE `class_log` (
	`session_id` text PRIMARY KEY NOT NULL,
	`plan_id` text NOT NULL,
	`number` integer NOT NULL,
	`room_id` text NOT NULL,
	`device_id` text NOT NULL,
	`kind` text NOT NULL,
	`started_at` integer NOT NULL,
	`received_at` integer NOT NULL,
	`log_json` text NOT NULL
);
--> statement-breakpoint
CREATE INDEX `class_log_edition` ON `class_log` (`plan_id`,`number`);