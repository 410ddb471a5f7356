import { useEffect, useState } from 'preact/hooks';
import { TrustInfo } from '../../src/protocol/trust.ts';
import { request } from '../browser/requests.ts';

/** Where other devices reach the server, for a page whose own address only this device can reach. */
export function NetworkAddress() {
  const [name, setName] = useState<string>();
  useEffect(() => {
    request('/api/trust', TrustInfo).then(
      ({ localName }) => setName(localName),
      () => undefined,
    );
  }, []);
  if (name === undefined) return <>the network address that the server prints</>;
  const url = `${location.protocol}//${name}${location.port && `:${location.port}`}`;
  return (
    <>
      <a href={url} translate={false}>
        {url}
      </a>
      , or, where a device does not find that, at the network address that the server prints
    </>
  );
}
