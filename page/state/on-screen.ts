/** What a finding says, without the words of the command line that stand in it as its remedy. */
export const onScreen = (message: string): string =>
  message.replace(/ \(--[^)]*\)/g, '').replace(/[;,] (?:or )?--[^;]*(?=;|$)/g, '');
