CREATE TABLE `plan_check` (
	`plan_id` text PRIMARY KEY NOT NULL,
	`generation` text NOT NULL,
	`seq` integer NOT NULL,
	`studio_mark` text NOT NULL,
	`program_mark` text NOT NULL,
	`plan_mark` text,
	`findings_mark` text,
	`must` integer NOT NULL,
	`look` integer NOT NULL,
	`info` integer NOT NULL
);
