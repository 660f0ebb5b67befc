/** A connection was refused because one of the host's addresses is not allowed. */
export class AddressRefused extends Error {
  override readonly name = 'AddressRefused';
  constructor(readonly hostname: string) {
    super(`${hostname} has an address that is not allowed`);
  }
}
