import { type Html, type HtmlPart, html } from '../shell/html.js';

interface FieldLook {
  readonly type?: 'text' | 'date' | 'time';
  readonly hint?: HtmlPart;
  /** A number: phones show their number keyboard. */
  readonly isNumber?: boolean;
  readonly size?: 'short';
  readonly placeholder?: string;
}

/** A labelled text field. */
export const textField = (
  name: string,
  label: string,
  value: string,
  { type = 'text', hint, isNumber = false, size, placeholder }: FieldLook = {},
): Html =>
  html`<label class="field ${size ?? ''}"><span>${label}</span><input type="${type}" name="${name}" value="${value}" autocomplete="off"${isNumber && html` inputmode="decimal"`}${placeholder !== undefined && html` placeholder="${placeholder}"`}>${hint !== undefined && html`<small>${hint}</small>`}</label>`;

export interface Option {
  readonly value: string;
  readonly text: string;
}

export const optionsOf = (pairs: readonly (readonly [value: string, text: string])[]): Option[] =>
  pairs.map(([value, text]) => ({ value, text }));

/** Options for stored or known things, by name. */
export const optionsNamed = (all: readonly { readonly id: string; readonly name: string }[]): Option[] =>
  all.map(({ id, name }) => ({ value: id, text: name }));

/** A labelled drop-down list; the chosen value stays even if it is no longer offered. */
export const selectField = (name: string, label: string, value: string, options: readonly Option[]): Html =>
  html`<label class="field"><span>${label}</span><select name="${name}">${withChosen(options, value).map(
    (option) =>
      html`<option value="${option.value}"${option.value === value && html` selected`}>${option.text}</option>`,
  )}</select></label>`;

const withChosen = (options: readonly Option[], value: string): readonly Option[] =>
  options.some((option) => option.value === value) ? options : [{ value, text: value }, ...options];

/** The unit of typed temperatures, kept with them when the form is rendered again. */
export const degreesField = (name: string, label: string, value: string): Html =>
  html`<label class="field"><span>${label}</span><select name="${name}" data-goes-with-numbers>${(
    ['C', 'F'] as const
  ).map(
    (unit) => html`<option value="${unit}"${unit === value && html` selected`}>°${unit}</option>`,
  )}</select></label>`;

/** One of several, all visible. */
export const radios = (name: string, legend: string, value: string, options: readonly Option[]): Html =>
  html`<fieldset class="radios"><legend>${legend}</legend>${options.map(
    (option) =>
      html`<label><input type="radio" name="${name}" value="${option.value}"${option.value === value && html` checked`}>${option.text}</label>`,
  )}</fieldset>`;

/** A hidden field. */
export const hidden = (name: string, value: string): Html =>
  html`<input type="hidden" name="${name}" value="${value}">`;
