import type { PageCode } from '../../words/page-en.js';
import type { PageQuestion, ViewName } from '../form/question.js';
import type { ProblemBody, Result, Send } from './api.js';
import type { Html } from './html.js';
import type { Inventory } from './inventory.js';
import type { PageReader } from './words.js';

/** A thermometer's file, or what was pasted of one. */
export interface FileGiven {
  readonly name: string;
  readonly body: Blob | Uint8Array;
  /** What to show again, so that nothing typed is lost. */
  readonly text?: string;
}

/** All that a view is made from. */
export interface AskedQuestion {
  readonly question: PageQuestion;
  readonly file: FileGiven | null;
  readonly shelf: Inventory;
  readonly reader: PageReader;
  readonly send: Send;
  /** Widths of pictures [px], the narrowest first: the style sheet shows the one that fits. */
  readonly widths: readonly number[];
  /** A change that was asked for and refused. */
  readonly tried?: Rejected | undefined;
}

/** What is answered of one date. */
export interface AtDate {
  /** The date in the reader's words. */
  readonly name: string;
  /** What is told at once, by the id of the element that it belongs into. */
  readonly atOnce: Readonly<Record<string, Html>>;
  /** What takes a question to the service, the same way. */
  readonly whole: () => Promise<Readonly<Record<string, Html>>>;
}

/** What a view answers. */
export interface AnsweredView {
  readonly shown: Html;
  /** What takes longer, asked for once it is wanted, and shown below. */
  readonly later?: () => Promise<Html>;
  /** Where a date can be moved: what becomes of the answer. */
  readonly atDate?: (date: string) => AtDate;
  /** The picture to keep, as SVG. */
  readonly picture?: () => string;
  /** The numbers to keep, as CSV. */
  readonly table?: () => string;
  /** The question as a link can hold it, a file's days in place of the file. */
  readonly link?: PageQuestion;
  /** A link holds less than what was answered. */
  readonly isLinkCoarser?: boolean;
}

/** What a form changed of what is kept. */
export interface Done {
  /** In words, as `Counted: 14 on 3 August`. */
  readonly said: string;
  /** The id of the element where it shows. */
  readonly at: string;
  /** What the question goes on with in place of what it held. */
  readonly goesOn?: Partial<PageQuestion>;
}

/** A change of what is kept, as a form says it. */
export type ActionOf = (said: URLSearchParams, asked: AskedQuestion) => Promise<Result<Done>>;

/** A change that was refused: what was typed is shown again. */
export interface Rejected {
  readonly said: URLSearchParams;
  readonly file: FileGiven | null;
  readonly problem: ProblemBody;
}

/** One of the page's leaves: what it asks, and what it answers. */
export interface View {
  readonly name: ViewName;
  readonly title: PageCode;
  /** What its picture and its numbers are called as files. */
  readonly fileName: string;
  readonly form: (asked: Omit<AskedQuestion, 'send'>) => Html;
  /** What is asked, in short, as `Lettuce, North bed, sown 3 August`. */
  readonly asked: (asked: Pick<AskedQuestion, 'question' | 'shelf' | 'reader'>) => Html;
  /** null: too little is said yet to ask. */
  readonly answer: (asked: AskedQuestion) => Promise<AnsweredView | null>;
  /** Makes a change that a form of its answer asks for. */
  readonly act: ActionOf;
}
