import type { Fact } from '../../basics/fact.js';
import { fieldFact } from '../../basics/field-facts.js';

/** What is wrong with an address to send messages to, to go on from the name of its field; null where nothing is. */
export function webhookUrlFault(address: string, allowHttp: boolean): Fact | null {
  if (!URL.canParse(address)) return fieldFact('field.address', { example: 'https://shed.example/alerts' });
  const { protocol, username, password, hash } = new URL(address);
  if (protocol !== 'https:' && !(allowHttp && protocol === 'http:'))
    return fieldFact('field.address-scheme', { schemes: 'https://' });
  if (username || password) return fieldFact('field.address-user');
  if (hash) return fieldFact('field.address-fragment');
  return null;
}
