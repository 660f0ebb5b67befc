import { describe, expect, it } from 'vitest';
import { negotiatedType } from '../../../src/http/negotiation/content-negotiation.js';

const both = ['application/json', 'image/svg+xml'];

describe('what an Accept header takes', () => {
  it.each([
    [undefined, 'application/json'],
    ['', 'application/json'],
    ['*/*', 'application/json'],
    ['image/svg+xml', 'image/svg+xml'],
    ['Image/SVG+XML ; Q=0.3', 'image/svg+xml'],
    ['image/*', 'image/svg+xml'],
    ['application/json, image/svg+xml', 'application/json'],
    ['image/svg+xml;q=0.9, application/json;q=0.8', 'image/svg+xml'],
    ['image/svg+xml;q=0.5, */*;q=0.6', 'application/json'],
    ['application/json;q=0, */*', 'image/svg+xml'],
    // As browsers ask for a picture in a page, and for a page.
    ['image/avif,image/webp,image/apng,image/svg+xml,image/*,*/*;q=0.8', 'image/svg+xml'],
    ['text/html,application/xhtml+xml,application/xml;q=0.9,image/avif,image/webp,*/*;q=0.8', 'application/json'],
    ['text/html', undefined],
    ['image/svg+xml;q=0', undefined],
    ['application/json;q=0.000, text/*', undefined],
  ])('%j: %s', (accept, mediaType) => {
    expect(negotiatedType(accept, both)).toBe(mediaType);
  });

  // RFC 9110, 12.5.1: its example of precedence, by exactness rather than by order.
  it('heeds the most exact range, as the standard’s example has it', () => {
    const accept = 'text/*;q=0.3, text/plain;q=0.7, text/plain;format=flowed, text/plain;format=fixed;q=0.4, */*;q=0.5';
    expect(negotiatedType(accept, ['text/html', 'image/jpeg'])).toBe('image/jpeg');
  });
});
