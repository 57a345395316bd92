/**
 * Told how far a piece of work is: so many of so many parts are done of what is done now. Of a step that has no parts it is
 * told 0 of 0 when it begins. Whoever tells it goes on as it would without; it changes no result.
 */
export type Progress = (done: number, total: number, what: string) => void;
