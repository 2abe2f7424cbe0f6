CREATE TABLE `account` (
	`id` text PRIMARY KEY NOT NULL,
	`account_id` text NOT NULL,
	`provider_id` text NOT NULL,
	`user_id` text NOT NULL,
	`access_token` text,
	`refresh_token` text,
	`id_token` text,
	`access_token_expires_at` integer,
	`refresh_token_expires_at` integer,
	`scope` text,
	`password` text,
	`created_at` integer NOT NULL,
	`updated_at` integer NOT NULL,
	FOREIGN KEY (`user_id`) REFERENCES `user`(`id`) ON UPDATE no action ON DELETE cascade
);
--> statement-breakpoint
CREATE INDEX `account_user` ON `account` (`user_id`);--> statement-breakpoint
CREATE TABLE `invitation` (
	`id` text PRIMARY KEY NOT NULL,
	`organization_id` text NOT NULL,
	`email` text NOT NULL,
	`name` text,
	`role` text,
	`status` text DEFAULT 'pending' NOT NULL,
	`expires_at` integer NOT NULL,
	`created_at` integer NOT NULL,
	`inviter_id` text NOT NULL,
	FOREIGN KEY (`organization_id`) REFERENCES `organization`(`id`) ON UPDATE no action ON DELETE cascade,
	FOREIGN KEY (`inviter_id`) REFERENCES `user`(`id`) ON UPDATE no action ON DELETE cascade
);
--> statement-breakpoint
CREATE INDEX `invitation_email` ON `invitation` (`email`);--> statement-breakpoint
CREATE TABLE `member` (
	`id` text PRIMARY KEY NOT NULL,
	`organization_id` text NOT NULL,
	`user_id` text NOT NULL,
	`role` text NOT NULL,
	`created_at` integer NOT NULL,
	FOREIGN KEY (`organization_id`) REFERENCES `organization`(`id`) ON UPDATE no action ON DELETE cascade,
	FOREIGN KEY (`user_id`) REFERENCES `user`(`id`) ON UPDATE no action ON DELETE cascade
);
--> statement-breakpoint
CREATE UNIQUE INDEX `member_user_id_unique` ON `member` (`user_id`);--> statement-breakpoint
CREATE INDEX `member_organization` ON `member` (`organization_id`);--> statement-breakpoint
CREATE TABLE `organization` (
	`id` text PRIMARY KEY NOT NULL,
	`name` text NOT NULL,
	`slug` text NOT NULL,
	`logo` text,
	`created_at` integer NOT NULL,
	`metadata` text
);
--> statement-breakpoint
CREATE UNIQUE INDEX `organization_slug_unique` ON `organization` (`slug`);--> statement-breakpoint
CREATE TABLE `session` (
	`id` text PRIMARY KEY NOT NULL,
	`expires_at` integer NOT NULL,
	`token` text NOT NULL,
	`created_at` integer NOT NULL,
	`updated_at` integer NOT NULL,
	`ip_address` text,
	`user_agent` text,
	`user_id` text NOT NULL,
	`active_organization_id` text,
	FOREIGN KEY (`user_id`) REFERENCES `user`(`id`) ON UPDATE no action ON DELETE cascade
);
--> statement-breakpoint
CREATE UNIQUE INDEX `session_token_unique` ON `session` (`token`);--> statement-breakpoint
CREATE INDEX `session_user` ON `session` (`user_id`);--> statement-breakpoint
CREATE TABLE `user` (
	`id` text PRIMARY KEY NOT NULL,
	`name` text NOT NULL,
	`email` text NOT NULL,
	`email_verified` integer DEFAULT false NOT NULL,
	`image` text,
	`created_at` integer NOT NULL,
	`updated_at` integer NOT NULL
);
--> statement-breakpoint
CREATE UNIQUE INDEX `user_email_unique` ON `user` (`email`);--> statement-breakpoint
CREATE TABLE `verification` (
	`id` text PRIMARY KEY NOT NULL,
	`identifier` text NOT NULL,
	`value` text NOT NULL,
	`expires_at` integer NOT NULL,
	`created_at` integer NOT NULL,
	`updated_at` integer NOT NULL
);
--> statement-breakpoint
CREATE INDEX `verification_identifier` ON `verification` (`identifier`);--> statement-breakpoint
CREATE TABLE `comment` (
	`id` text PRIMARY KEY NOT NULL,
	`thread_id` text NOT NULL,
	`author_id` text NOT NULL,
	`body` text NOT NULL,
	`at` integer NOT NULL
);
--> statement-breakpoint
CREATE INDEX `comment_thread` ON `comment` (`thread_id`);--> statement-breakpoint
CREATE TABLE `device` (
	`id` text PRIMARY KEY NOT NULL,
	`name` text NOT NULL,
	`room_id` text NOT NULL,
	`token_hash` text,
	`code_hash` text,
	`code_expires_at` integer,
	`paired_at` integer,
	`last_seen_at` integer,
	`revoked_at` integer,
	`created_by` text NOT NULL
);
--> statement-breakpoint
CREATE TABLE `doc_snapshot` (
	`name` text NOT NULL,
	`seq` integer NOT NULL,
	`bytes` blob NOT NULL,
	`at` integer NOT NULL,
	PRIMARY KEY(`name`, `seq`)
);
--> statement-breakpoint
CREATE TABLE `doc_update` (
	`seq` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`name` text NOT NULL,
	`bytes` blob NOT NULL,
	`actor_id` text NOT NULL,
	`at` integer NOT NULL
);
--> statement-breakpoint
CREATE INDEX `doc_update_name` ON `doc_update` (`name`,`seq`);--> statement-breakpoint
CREATE TABLE `document` (
	`name` text PRIMARY KEY NOT NULL,
	`generation` text NOT NULL,
	`created_at` integer NOT NULL
);
--> statement-breakpoint
CREATE TABLE `edition` (
	`plan_id` text NOT NULL,
	`number` integer NOT NULL,
	`hash` text NOT NULL,
	`plan_json` text NOT NULL,
	`card_json` text NOT NULL,
	`findings_json` text NOT NULL,
	`signed_by` text NOT NULL,
	`signed_at` integer NOT NULL,
	`note` text,
	PRIMARY KEY(`plan_id`, `number`)
);
--> statement-breakpoint
CREATE TABLE `move` (
	`id` text PRIMARY KEY NOT NULL,
	`data_json` text NOT NULL,
	`updated_at` integer NOT NULL
);
--> statement-breakpoint
CREATE TABLE `plan` (
	`id` text PRIMARY KEY NOT NULL,
	`title` text NOT NULL,
	`length_seconds` integer NOT NULL,
	`owner_id` text NOT NULL,
	`room_id` text NOT NULL,
	`team` integer DEFAULT false NOT NULL,
	`state` text DEFAULT 'in-writing' NOT NULL,
	`handed_in_by` text,
	`handed_in_at` integer,
	`state_note` text,
	`created_at` integer NOT NULL,
	`updated_at` integer NOT NULL,
	`deleted_at` integer
);
--> statement-breakpoint
CREATE INDEX `plan_owner` ON `plan` (`owner_id`);--> statement-breakpoint
CREATE TABLE `plan_author` (
	`plan_id` text NOT NULL,
	`user_id` text NOT NULL,
	`first_at` integer NOT NULL,
	PRIMARY KEY(`plan_id`, `user_id`)
);
--> statement-breakpoint
CREATE TABLE `plan_event` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`plan_id` text NOT NULL,
	`at` integer NOT NULL,
	`actor_id` text NOT NULL,
	`kind` text NOT NULL,
	`note` text,
	`hash` text
);
--> statement-breakpoint
CREATE INDEX `plan_event_plan` ON `plan_event` (`plan_id`);--> statement-breakpoint
CREATE TABLE `plan_reading` (
	`plan_id` text NOT NULL,
	`user_id` text NOT NULL,
	`hash` text NOT NULL,
	`plan_json` text NOT NULL,
	`at` integer NOT NULL,
	PRIMARY KEY(`plan_id`, `user_id`, `hash`)
);
--> statement-breakpoint
CREATE TABLE `plan_share` (
	`plan_id` text NOT NULL,
	`user_id` text NOT NULL,
	PRIMARY KEY(`plan_id`, `user_id`)
);
--> statement-breakpoint
CREATE TABLE `room` (
	`id` text PRIMARY KEY NOT NULL,
	`name` text NOT NULL,
	`equipment_json` text NOT NULL
);
--> statement-breakpoint
CREATE TABLE `signing_key` (
	`id` text PRIMARY KEY NOT NULL,
	`public_key` text NOT NULL,
	`sealed_private_key` text NOT NULL,
	`created_at` integer NOT NULL
);
--> statement-breakpoint
CREATE TABLE `studio` (
	`id` integer PRIMARY KEY NOT NULL,
	`name` text NOT NULL,
	`town` text DEFAULT '' NOT NULL,
	`standards_json` text DEFAULT '{}' NOT NULL,
	`sole_author_may_sign` integer DEFAULT false NOT NULL,
	`created_at` integer NOT NULL
);
--> statement-breakpoint
CREATE TABLE `thread` (
	`id` text PRIMARY KEY NOT NULL,
	`plan_id` text NOT NULL,
	`anchor_json` text NOT NULL,
	`settled` integer DEFAULT false NOT NULL,
	`created_at` integer NOT NULL
);
--> statement-breakpoint
CREATE INDEX `thread_plan` ON `thread` (`plan_id`);