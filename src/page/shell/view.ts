import type { PageCode } from '../../words/page-en.js';
import type { PageQuestion, ViewName } from '../form/question.js';
import type { ProblemBody, Result, Send } from './api.js';
import type { Html } from './html.js';
import type { Inventory } from './inventory.js';
import type { PageReader } from './words.js';

/** A thermometer's file, or text pasted from one. */
export interface FileGiven {
  readonly name: string;
  readonly body: Blob | Uint8Array;
  /** The text to show again, so that nothing typed is lost. */
  readonly text?: string;
}

/** Everything that a view is rendered from. */
export interface AskedQuestion {
  readonly question: PageQuestion;
  readonly file: FileGiven | null;
  readonly shelf: Inventory;
  readonly reader: PageReader;
  readonly send: Send;
  /** Widths of pictures [px], narrowest first: the style sheet shows the one that fits. */
  readonly widths: readonly number[];
  /** A rejected submission of an action. */
  readonly tried?: Rejected | undefined;
}

/** The answer about one date. */
export interface AtDate {
  /** The date in the reader's words. */
  readonly name: string;
  /** Parts known at once, by the id of their element. */
  readonly atOnce: Readonly<Record<string, Html>>;
  /** Parts that need a request, by the id of their element. */
  readonly whole: () => Promise<Readonly<Record<string, Html>>>;
}

/** A view's answer. */
export interface AnsweredView {
  readonly shown: Html;
  /** A slower part, requested when wanted and shown below. */
  readonly later?: () => Promise<Html>;
  /** The answer at another date, for an answer whose date can move. */
  readonly atDate?: (date: string) => AtDate;
  /** The picture for download, as SVG. */
  readonly picture?: () => string;
  /** The numbers for download, as CSV. */
  readonly table?: () => string;
  /** The question as a link can hold it, with a file's days in place of the file. */
  readonly link?: PageQuestion;
  /** True if the link holds less than was answered. */
  readonly isLinkCoarser?: boolean;
}

/** The result of an action. */
export interface Done {
  /** In words, as `Counted: 14 on 3 August`. */
  readonly said: string;
  /** The id of the changed element. */
  readonly at: string;
  /** Changes to the question that follow from the action. */
  readonly goesOn?: Partial<PageQuestion>;
}

/** Runs an action that a form asks for. */
export type ActionOf = (said: URLSearchParams, asked: AskedQuestion) => Promise<Result<Done>>;

/** A rejected submission; the typed values are shown again. */
export interface Rejected {
  readonly said: URLSearchParams;
  readonly file: FileGiven | null;
  readonly problem: ProblemBody;
}

/** One of the page's views: its form and its answer. */
export interface View {
  readonly name: ViewName;
  readonly title: PageCode;
  /** The file name of its picture and numbers. */
  readonly fileName: string;
  readonly form: (asked: Omit<AskedQuestion, 'send'>) => Html;
  /** The question in short, as `Lettuce, North bed, sown 3 August`. */
  readonly summary: (asked: Pick<AskedQuestion, 'question' | 'shelf' | 'reader'>) => Html;
  /** null: the question is incomplete. */
  readonly answer: (asked: AskedQuestion) => Promise<AnsweredView | null>;
  /** Runs an action that a form of its answer asks for. */
  readonly runAction: ActionOf;
}
