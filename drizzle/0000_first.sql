CREATE TABLE "club" (
	"id" integer PRIMARY KEY GENERATED ALWAYS AS IDENTITY (sequence name "club_id_seq" INCREMENT BY 1 MINVALUE 1 MAXVALUE 2147483647 START WITH 1 CACHE 1),
	"platform" text NOT NULL,
	"platform_id" text NOT NULL,
	"name" text NOT NULL,
	"channel_id" text,
	"log_channel_id" text,
	"zone" text DEFAULT 'UTC' NOT NULL,
	"roundup_day" smallint DEFAULT 0,
	"roundup_hour" smallint DEFAULT 9 NOT NULL,
	"trouble" text,
	"greeted_at" timestamp with time zone,
	"left_at" timestamp with time zone,
	"created_at" timestamp with time zone NOT NULL
);
--> statement-breakpoint
CREATE TABLE "handled" (
	"id" text PRIMARY KEY NOT NULL,
	"at" timestamp with time zone NOT NULL
);
--> statement-breakpoint
CREATE TABLE "member" (
	"id" integer PRIMARY KEY GENERATED ALWAYS AS IDENTITY (sequence name "member_id_seq" INCREMENT BY 1 MINVALUE 1 MAXVALUE 2147483647 START WITH 1 CACHE 1),
	"club_id" integer NOT NULL,
	"platform_user_id" text NOT NULL,
	"name" text NOT NULL,
	"place" text,
	"lat" double precision,
	"lon" double precision,
	"zone" text,
	"hemisphere" text,
	"units" text DEFAULT 'F' NOT NULL,
	"dates" text,
	"heat_mark" double precision,
	"heat_end" text,
	"last_frost" text,
	"first_frost" text,
	"caution_days" smallint DEFAULT 0 NOT NULL,
	"nudge_hour" smallint DEFAULT 8 NOT NULL,
	"nudge_way" text DEFAULT 'channel' NOT NULL,
	"rule" text DEFAULT 'days' NOT NULL,
	"series_id" integer,
	"own_series_id" integer,
	"summary" jsonb,
	"season_known_on" date,
	"keeps_out" boolean DEFAULT false NOT NULL,
	"last_seen_on" date,
	"created_at" timestamp with time zone NOT NULL
);
--> statement-breakpoint
CREATE TABLE "note" (
	"id" integer PRIMARY KEY GENERATED ALWAYS AS IDENTITY (sequence name "note_id_seq" INCREMENT BY 1 MINVALUE 1 MAXVALUE 2147483647 START WITH 1 CACHE 1),
	"member_id" integer NOT NULL,
	"text" text NOT NULL,
	"message_id" text,
	"reply_message_id" text,
	"ask" jsonb,
	"written_on" date NOT NULL,
	"corrects" integer,
	"undone_at" timestamp with time zone,
	"created_at" timestamp with time zone NOT NULL
);
--> statement-breakpoint
CREATE TABLE "nudge" (
	"id" integer PRIMARY KEY GENERATED ALWAYS AS IDENTITY (sequence name "nudge_id_seq" INCREMENT BY 1 MINVALUE 1 MAXVALUE 2147483647 START WITH 1 CACHE 1),
	"member_id" integer NOT NULL,
	"tree_id" integer NOT NULL,
	"season" text NOT NULL,
	"kind" text NOT NULL,
	"occurrence" smallint DEFAULT 0 NOT NULL,
	"due" date NOT NULL,
	"state" text DEFAULT 'pending' NOT NULL,
	"attempt" smallint DEFAULT 0 NOT NULL,
	"token" text,
	"leased_until" timestamp with time zone,
	"nonce" text,
	"channel_id" text,
	"message_id" text,
	"error" text,
	"sent_at" timestamp with time zone,
	"answer" text,
	"answered_at" timestamp with time zone,
	"created_at" timestamp with time zone NOT NULL
);
--> statement-breakpoint
CREATE TABLE "observation" (
	"id" integer PRIMARY KEY GENERATED ALWAYS AS IDENTITY (sequence name "observation_id_seq" INCREMENT BY 1 MINVALUE 1 MAXVALUE 2147483647 START WITH 1 CACHE 1),
	"member_id" integer NOT NULL,
	"tree_id" integer,
	"note_id" integer,
	"kind" text NOT NULL,
	"day" date NOT NULL,
	"count" double precision,
	"unit" text,
	"crop" text,
	"shoots" smallint,
	"text" text NOT NULL,
	"by" text NOT NULL,
	"message_id" text,
	"undone_at" timestamp with time zone,
	"created_at" timestamp with time zone NOT NULL
);
--> statement-breakpoint
CREATE TABLE "roundup" (
	"id" integer PRIMARY KEY GENERATED ALWAYS AS IDENTITY (sequence name "roundup_id_seq" INCREMENT BY 1 MINVALUE 1 MAXVALUE 2147483647 START WITH 1 CACHE 1),
	"club_id" integer NOT NULL,
	"period" text NOT NULL,
	"state" text DEFAULT 'pending' NOT NULL,
	"token" text,
	"nonce" text,
	"message_id" text,
	"error" text,
	"created_at" timestamp with time zone NOT NULL
);
--> statement-breakpoint
CREATE TABLE "tree" (
	"id" integer PRIMARY KEY GENERATED ALWAYS AS IDENTITY (sequence name "tree_id_seq" INCREMENT BY 1 MINVALUE 1 MAXVALUE 2147483647 START WITH 1 CACHE 1),
	"member_id" integer NOT NULL,
	"name" text NOT NULL,
	"name_key" text NOT NULL,
	"cultivar" text,
	"ripening" text,
	"span_from" smallint,
	"span_to" smallint,
	"started_on" date,
	"kept" text DEFAULT 'ground' NOT NULL,
	"cover_days" smallint DEFAULT 0 NOT NULL,
	"purpose" text DEFAULT 'fruit' NOT NULL,
	"pollinated" boolean DEFAULT false NOT NULL,
	"parent_tree_id" integer,
	"origin" text,
	"spare_wood" boolean DEFAULT false NOT NULL,
	"left_alone_in" text,
	"retired_on" date,
	"look_on" date,
	"added_on" date NOT NULL,
	"created_at" timestamp with time zone NOT NULL
);
--> statement-breakpoint
CREATE TABLE "weather_series" (
	"id" integer PRIMARY KEY GENERATED ALWAYS AS IDENTITY (sequence name "weather_series_id_seq" INCREMENT BY 1 MINVALUE 1 MAXVALUE 2147483647 START WITH 1 CACHE 1),
	"source" text NOT NULL,
	"station_id" text NOT NULL,
	"name" text NOT NULL,
	"lat" double precision,
	"lon" double precision,
	"elevation_m" double precision,
	"fetched_at" timestamp with time zone
);
--> statement-breakpoint
CREATE TABLE "weather_year" (
	"series_id" integer NOT NULL,
	"year" smallint NOT NULL,
	"tmax" "bytea" NOT NULL,
	"tmin" "bytea" NOT NULL,
	CONSTRAINT "weather_year_series_id_year_pk" PRIMARY KEY("series_id","year")
);
--> statement-breakpoint
ALTER TABLE "member" ADD CONSTRAINT "member_club_id_club_id_fk" FOREIGN KEY ("club_id") REFERENCES "public"."club"("id") ON DELETE cascade ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "member" ADD CONSTRAINT "member_series_id_weather_series_id_fk" FOREIGN KEY ("series_id") REFERENCES "public"."weather_series"("id") ON DELETE set null ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "member" ADD CONSTRAINT "member_own_series_id_weather_series_id_fk" FOREIGN KEY ("own_series_id") REFERENCES "public"."weather_series"("id") ON DELETE set null ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "note" ADD CONSTRAINT "note_member_id_member_id_fk" FOREIGN KEY ("member_id") REFERENCES "public"."member"("id") ON DELETE cascade ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "nudge" ADD CONSTRAINT "nudge_member_id_member_id_fk" FOREIGN KEY ("member_id") REFERENCES "public"."member"("id") ON DELETE cascade ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "nudge" ADD CONSTRAINT "nudge_tree_id_tree_id_fk" FOREIGN KEY ("tree_id") REFERENCES "public"."tree"("id") ON DELETE cascade ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "observation" ADD CONSTRAINT "observation_member_id_member_id_fk" FOREIGN KEY ("member_id") REFERENCES "public"."member"("id") ON DELETE cascade ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "observation" ADD CONSTRAINT "observation_tree_id_tree_id_fk" FOREIGN KEY ("tree_id") REFERENCES "public"."tree"("id") ON DELETE cascade ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "observation" ADD CONSTRAINT "observation_note_id_note_id_fk" FOREIGN KEY ("note_id") REFERENCES "public"."note"("id") ON DELETE cascade ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "roundup" ADD CONSTRAINT "roundup_club_id_club_id_fk" FOREIGN KEY ("club_id") REFERENCES "public"."club"("id") ON DELETE cascade ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "tree" ADD CONSTRAINT "tree_member_id_member_id_fk" FOREIGN KEY ("member_id") REFERENCES "public"."member"("id") ON DELETE cascade ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "weather_year" ADD CONSTRAINT "weather_year_series_id_weather_series_id_fk" FOREIGN KEY ("series_id") REFERENCES "public"."weather_series"("id") ON DELETE cascade ON UPDATE no action;--> statement-breakpoint
CREATE UNIQUE INDEX "club_platform" ON "club" USING btree ("platform","platform_id");--> statement-breakpoint
CREATE INDEX "handled_at" ON "handled" USING btree ("at");--> statement-breakpoint
CREATE UNIQUE INDEX "member_user" ON "member" USING btree ("club_id","platform_user_id");--> statement-breakpoint
CREATE INDEX "member_series" ON "member" USING btree ("series_id");--> statement-breakpoint
CREATE UNIQUE INDEX "note_message" ON "note" USING btree ("member_id","message_id") WHERE message_id is not null;--> statement-breakpoint
CREATE INDEX "note_reply" ON "note" USING btree ("member_id","reply_message_id");--> statement-breakpoint
CREATE UNIQUE INDEX "nudge_once" ON "nudge" USING btree ("tree_id","season","kind","occurrence");--> statement-breakpoint
CREATE INDEX "nudge_member_state" ON "nudge" USING btree ("member_id","state");--> statement-breakpoint
CREATE INDEX "nudge_message" ON "nudge" USING btree ("message_id") WHERE message_id is not null;--> statement-breakpoint
CREATE INDEX "nudge_waiting" ON "nudge" USING btree ("due") WHERE state in ('pending', 'leased');--> statement-breakpoint
CREATE INDEX "observation_tree" ON "observation" USING btree ("tree_id","day");--> statement-breakpoint
CREATE INDEX "observation_member" ON "observation" USING btree ("member_id","day");--> statement-breakpoint
CREATE INDEX "observation_note" ON "observation" USING btree ("note_id");--> statement-breakpoint
CREATE UNIQUE INDEX "roundup_once" ON "roundup" USING btree ("club_id","period");--> statement-breakpoint
CREATE UNIQUE INDEX "tree_name" ON "tree" USING btree ("member_id","name_key");--> statement-breakpoint
CREATE INDEX "tree_look_on" ON "tree" USING btree ("look_on") WHERE look_on is not null;--> statement-breakpoint
CREATE UNIQUE INDEX "weather_series_station" ON "weather_series" USING btree ("source","station_id");