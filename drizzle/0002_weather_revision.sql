ALTER TABLE "weather_series" ADD COLUMN "revision" text DEFAULT gen_random_uuid()::text NOT NULL;--> statement-breakpoint
ALTER TABLE "weather_series" ADD COLUMN "tried_at" timestamp with time zone;