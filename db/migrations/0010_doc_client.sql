CREATE TABLE `doc_client` (
	`name` text NOT NULL,
	`client_id` integer NOT NULL,
	`user_id` text NOT NULL,
	`at` integer NOT NULL,
	PRIMARY KEY(`name`, `client_id`)
);
