/**
 * How far ahead something is told as a thing to do, without a day before which it need not be done. Chosen by us: a
 * storm of tomorrow afternoon belongs in this morning's round.
 */
export const NOTICE_H = 36;
