import type { Fact } from '../../basics/fact.js';
import { fieldFact } from '../../basics/field-facts.js';

/** The fault of an address for messages, worded to follow the name of its field; null if there is none. */
export function webhookUrlFault(address: string, allowHttp: boolean): Fact | null {
  if (!URL.canParse(address)) return fieldFact('field.address', { example: 'https://shed.example/alerts' });
  const { protocol, username, password, hash } = new URL(address);
  if (protocol !== 'https:' && !(allowHttp && protocol === 'http:'))
    return fieldFact('field.address-scheme', { schemes: 'https://' });
  if (username || password) return fieldFact('field.address-user');
  if (hash) return fieldFact('field.address-fragment');
  return null;
}
