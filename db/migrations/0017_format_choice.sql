CREATE TABLE `format_choice` (
	`user_id` text PRIMARY KEY NOT NULL,
	`choices_json` text NOT NULL
);
