/** The text of what the page opens with, see core/ready.ts. */
declare module 'virtual:ready' {
  const text: string;
  export default text;
  /** tells it from the text of a page that was built otherwise */
  export const stamp: string;
}
