CREATE TABLE `move_event` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`move_id` text NOT NULL,
	`at` integer NOT NULL,
	`actor_id` text NOT NULL,
	`kind` text NOT NULL,
	`data_json` text NOT NULL
);
--> statement-breakpoint
CREATE INDEX `move_event_move` ON `move_event` (`move_id`);--> statement-breakpoint
ALTER TABLE `move` ADD `archived_at` integer;