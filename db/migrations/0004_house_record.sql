CREATE TABLE `studio_event` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`at` integer NOT NULL,
	`actor_id` text NOT NULL,
	`kind` text NOT NULL,
	`subject` text NOT NULL,
	`data_json` text NOT NULL
);
--> statement-breakpoint
CREATE INDEX `studio_event_subject` ON `studio_event` (`kind`,`subject`);--> statement-breakpoint
ALTER TABLE `room` ADD `readings_json` text;