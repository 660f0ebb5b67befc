/** What is wrong with an address to send messages to, to go on from the name of its field; null where nothing is. */
export function webhookUrlFault(address: string, allowHttp: boolean): string | null {
  if (!URL.canParse(address)) return 'must be a whole address, such as https://shed.example/alerts';
  const { protocol, username, password, hash } = new URL(address);
  if (protocol !== 'https:' && !(allowHttp && protocol === 'http:')) return 'must begin with https://';
  if (username || password) return 'must not hold a user name or password';
  if (hash) return 'must not hold a fragment (#…), which is never sent';
  return null;
}
