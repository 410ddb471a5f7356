import { useEffect, useState } from 'preact/hooks';
import { TrustInfo } from '../../src/protocol/trust.ts';
import { request } from '../browser/requests.ts';

/** By which name other devices find the server, for a page whose own address only this device can reach. Nothing where there is none. */
export function NetworkAddress() {
  const [name, setName] = useState<string>();
  useEffect(() => {
    request('/api/trust', TrustInfo).then(
      ({ localName }) => setName(localName),
      () => undefined,
    );
  }, []);
  if (name === undefined) return null;
  const url = `${location.protocol}//${name}${location.port && `:${location.port}`}`;
  return (
    <p>
      By name, where a device finds it:{' '}
      <a href={url} translate={false}>
        {url}
      </a>
    </p>
  );
}
