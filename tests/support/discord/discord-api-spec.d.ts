// The package's own typings of its schemas are missing from what is published, so they are given here.
declare module 'discord-api-spec/zod' {
  interface Schema {
    safeParse(
      value: unknown,
    ):
      | { success: true; data: unknown }
      | { success: false; error: { issues: { path: PropertyKey[]; message: string }[] } };
  }
  export const ApplicationCommandAutocompleteCallbackRequestSchema: Schema;
  export const ApplicationCommandCreateRequestSchema: Schema;
  export const ApplicationCommandPatchRequestPartialSchema: Schema;
  export const ApplicationCommandUpdateRequestSchema: Schema;
  export const CreateMessageInteractionCallbackRequestSchema: Schema;
  export const CreatePrivateChannelRequestSchema: Schema;
  export const IncomingWebhookRequestPartialSchema: Schema;
  export const IncomingWebhookUpdateRequestPartialSchema: Schema;
  export const MessageCreateRequestSchema: Schema;
  export const MessageEditRequestPartialSchema: Schema;
  export const UpdateMessageInteractionCallbackRequestSchema: Schema;
}
