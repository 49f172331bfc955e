CREATE TABLE "pace" (
	"name" text PRIMARY KEY NOT NULL,
	"free_at" timestamp with time zone NOT NULL
);
--> statement-breakpoint
ALTER TABLE "member" ADD COLUMN "quiet_asked_on" date;--> statement-breakpoint
ALTER TABLE "tree" ADD COLUMN "decision_on" date;