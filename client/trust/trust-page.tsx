import type { ComponentChildren } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import { AUTHORITY_PATH, TrustInfo } from '../../src/protocol/trust.ts';
import { NetworkAddress } from '../address/network-address.tsx';
import { type ApiError, request } from '../browser/requests.ts';
import { follow, linkTo } from '../browser/route.ts';
import { isThisDeviceOnly } from '../browser/this-device.ts';
import { useKeptPages } from '../offline/registration.ts';
import { Page } from '../ui/page.tsx';
import { Square } from '../ui/square.tsx';
import './trust.css';

/** How a phone is told to trust the server's own certificate, so that its microphone works. */
export function TrustPage() {
  const [info, setInfo] = useState<TrustInfo>();
  const [failure, setFailure] = useState<string>();
  useEffect(() => {
    request('/api/trust', TrustInfo).then(setInfo, (error: ApiError) => setFailure(error.message));
  }, []);
  return (
    <Page>
      <h1>The microphone of this phone</h1>
      <p>
        Browsers give a page the microphone only over https from a server that the phone trusts. Everything
        else, typing too, works without.
      </p>
      {failure && (
        <p class="failure" role="alert">
          {failure}
        </p>
      )}
      {info && <Way info={info} />}
      <p>
        <a class="button" href={linkTo('home', {})} onClick={follow}>
          To the start
        </a>
      </p>
    </Page>
  );
}

const isHttps = () => location.protocol === 'https:';
const over = (scheme: 'http' | 'https', path: string) => `${scheme}://${location.host}${path}`;

function Way({ info }: { info: TrustInfo }) {
  const { kept } = useKeptPages();
  if (isThisDeviceOnly(location.hostname))
    return (
      <>
        <p class="trust-state">
          On this device there is nothing to do. For a phone, open this page at the network address that the
          server prints.
        </p>
        <NetworkAddress />
      </>
    );
  switch (info.kind) {
    case 'own-authority':
      // A browser keeps pages only from a server that it trusts.
      if (isHttps() && kept === 'yes') return <AllDone />;
      return <Steps name={info.name} fingerprint={info.fingerprint} />;
    case 'trusted':
      return isHttps() ? <AllDone /> : <Onward />;
    case 'no-https':
      if (isHttps()) return <AllDone />;
      return (
        <p class="trust-state">
          This server gives no https, so the microphone stays off. Type instead. Whoever runs the server can
          start it without <code>--tls off</code>.
        </p>
      );
  }
}

const AllDone = () => (
  <p class="trust-state" role="status">
    Done: this device trusts the server. Allow the microphone when the page asks for it.
  </p>
);

const Onward = () => (
  <p>
    <a class="button main" href={over('https', linkTo('home', {}))}>
      Open it over https
    </a>
  </p>
);

function Steps({ name, fingerprint }: { name: string; fingerprint: string }) {
  const device = deviceOf(navigator.userAgent);
  return (
    <>
      {isHttps() && (
        <p class="trust-state" role="status">
          This device does not trust the server yet.
        </p>
      )}
      {device === 'computer' && (
        <section class="card">
          <h2>For a phone: scan this</h2>
          <Square
            text={over('http', linkTo('trust', {}))}
            label="Square code that opens this page on a phone"
          />
        </section>
      )}
      <section class="card">
        <h2>1. Get the certificate</h2>
        <p>
          <a class="button main" href={over('http', AUTHORITY_PATH)} download="ladderline.crt">
            Get the certificate
          </a>
        </p>
        <p>If the browser warns of the download, keep it. The server prints the same number at its start:</p>
        <p class="trust-number">{fingerprint}</p>
      </section>
      <section class="card">
        <h2>2. Tell the device to trust it</h2>
        {(['iphone', 'android', 'computer'] as const).map((kind) => (
          <details key={kind} class="trust-how" open={kind === device}>
            <summary>{DEVICES[kind]}</summary>
            <ol>
              {HOW[kind](name).map((step, index) => (
                <li key={index}>{step}</li>
              ))}
            </ol>
          </details>
        ))}
        <p class="hint">
          It is good only for addresses of private networks, for names that end in .local, and for this
          server. Take it away again in the same place.
        </p>
      </section>
      <section class="card">
        <h2>3. Open the page over https</h2>
        <p>
          <a class="button main" href={over('https', linkTo('trust', {}))}>
            Check it over https
          </a>
        </p>
        <p>There the phone begins anew: join a job that is under way with a new code from the other phone.</p>
      </section>
    </>
  );
}

type Device = 'iphone' | 'android' | 'computer';
const DEVICES: Record<Device, string> = {
  iphone: 'iPhone or iPad',
  android: 'Android',
  computer: 'Computer',
};

/** By what the browser says of itself. An iPad says that it is a Mac, but has a screen to touch. */
function deviceOf(agent: string): Device {
  if (/iPhone|iPad/.test(agent) || (/Macintosh/.test(agent) && navigator.maxTouchPoints > 1)) return 'iphone';
  return /Android/.test(agent) ? 'android' : 'computer';
}

const HOW: Record<Device, (name: string) => ComponentChildren[]> = {
  iphone: (name) => [
    'Use Safari for this page. After "Get the certificate", tap Allow.',
    <>
      Settings, General, VPN &amp; Device Management: tap <b>{name}</b>, then Install.
    </>,
    <>
      Settings, General, About, Certificate Trust Settings (at the end): turn on <b>{name}</b>. Without this
      second step nothing changes.
    </>,
  ],
  android: () => [
    'Settings: search for "CA certificate". It is under Security, Encryption & credentials, Install a certificate.',
    'Tap CA certificate, then Install anyway, and choose ladderline.crt in Downloads. The phone may want a screen lock first.',
    'Use Chrome. Firefox takes it only after its own setting "Use third party CA certificates".',
  ],
  computer: () => [
    'Windows: open the file, Install Certificate, Current User, and choose "Trusted Root Certification Authorities".',
    'Mac: open the file, then in Keychain Access open it again: Trust, Always Trust.',
    'Firefox: Settings, Certificates, View Certificates, Authorities, Import.',
  ],
};
