import type { Sentences } from '../translate.ts';

/** How a phone is told to trust the server. */
export const TRUST: Sentences = {
  'The microphone of this phone': 'El micrófono de este teléfono',
  'Browsers give a page the microphone only over https from a server that the phone trusts. Everything else, typing too, works without.':
    'Los navegadores solo dan el micrófono a una página por https de un servidor en el que el teléfono confía. Todo lo demás, también escribir, funciona sin eso.',
  'On this device there is nothing to do. For a phone, open this page at the network address that the server prints.':
    'En este dispositivo no hay nada que hacer. Para un teléfono, abra esta página en la dirección de red que muestra el servidor.',
  'This server gives no https, so the microphone stays off. Type instead. Whoever runs the server can start it without':
    'Este servidor no da https, así que el micrófono queda apagado. Escriba. Quien lleva el servidor puede arrancarlo sin',
  'Done: this device trusts the server. Allow the microphone when the page asks for it.':
    'Hecho: este dispositivo confía en el servidor. Permita el micrófono cuando la página lo pida.',
  'Open it over https': 'Abrirla por https',
  'This device does not trust the server yet.': 'Este dispositivo aún no confía en el servidor.',
  'For a phone: scan this': 'Para un teléfono: escanee esto',
  'Square code that opens this page on a phone': 'Código cuadrado que abre esta página en un teléfono',
  '1. Get the certificate': '1. Obtener el certificado',
  'Get the certificate': 'Obtener el certificado',
  'If the browser warns of the download, keep it. The server prints the same number at its start:':
    'Si el navegador avisa de la descarga, consérvela. El servidor muestra el mismo número al arrancar:',
  '2. Tell the device to trust it': '2. Decir al dispositivo que confíe',
  'It is good only for addresses of private networks, for names that end in .local, and for this server. Take it away again in the same place.':
    'Solo vale para direcciones de redes privadas, para nombres que acaban en .local y para este servidor. Se quita en el mismo sitio.',
  '3. Open the page over https': '3. Abrir la página por https',
  'Check it over https': 'Comprobarlo por https',
  'There the phone begins anew: join a job that is under way with a new code from the other phone.':
    'Allí el teléfono empieza de nuevo: únase a un trabajo en marcha con un código nuevo del otro teléfono.',
  'iPhone or iPad': 'iPhone o iPad',
  Android: 'Android',
  Computer: 'Ordenador',
  'Use Safari for this page. After "Get the certificate", tap Allow.':
    'Use Safari para esta página. Tras "Obtener el certificado", toque Permitir.',
  'Settings, General, VPN & Device Management: tap': 'Ajustes, General, VPN y gestión de dispositivos: toque',
  ', then Install.': ', luego Instalar.',
  'Settings, General, About, Certificate Trust Settings (at the end): turn on':
    'Ajustes, General, Información, Ajustes de confianza de los certificados (al final): active',
  '. Without this second step nothing changes.': '. Sin este segundo paso no cambia nada.',
  'Settings: search for "CA certificate". It is under Security, Encryption & credentials, Install a certificate.':
    'Ajustes: busque "certificado CA". Está en Seguridad, Cifrado y credenciales, Instalar un certificado.',
  'Tap CA certificate, then Install anyway, and choose ladderline.crt in Downloads. The phone may want a screen lock first.':
    'Toque Certificado CA, luego Instalar de todos modos, y elija ladderline.crt en Descargas. El teléfono puede pedir antes un bloqueo de pantalla.',
  'Use Chrome. Firefox takes it only after its own setting "Use third party CA certificates".':
    'Use Chrome. Firefox solo lo acepta con su propio ajuste "Use third party CA certificates".',
  'Windows: open the file, Install Certificate, Current User, and choose "Trusted Root Certification Authorities".':
    'Windows: abra el archivo, Instalar certificado, Usuario actual, y elija "Entidades de certificación raíz de confianza".',
  'Mac: open the file, then in Keychain Access open it again: Trust, Always Trust.':
    'Mac: abra el archivo y ábralo otra vez en Acceso a Llaveros: Confiar, Confiar siempre.',
  'Firefox: Settings, Certificates, View Certificates, Authorities, Import.':
    'Firefox: Ajustes, Certificados, Ver certificados, Autoridades, Importar.',
};
