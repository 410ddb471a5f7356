import type { Sentences } from '../translate.ts';

export const ACCOUNTS: Sentences = {
  'Whoever runs this server asks for an account before a site or a job is opened, and for a signature. Sign in with your passkey.':
    'Quien lleva este servidor pide una cuenta antes de abrir una obra o un trabajo, y para firmar. Entre con su llave de acceso.',
  'This was left alone for too long, or too long ago begun. Sign in again with your passkey, then try once more.':
    'Esto quedó parado demasiado tiempo, o empezó hace demasiado. Entre otra vez con su llave de acceso e inténtelo de nuevo.',
  'This server has no accounts: nobody needs one here.':
    'Este servidor no tiene cuentas: aquí nadie necesita una.',
  'This passkey opens nothing here. Its account was withdrawn, or it belongs to another server. Ask whoever runs this server for an invitation.':
    'Esta llave de acceso no abre nada aquí. Su cuenta se retiró, o es de otro servidor. Pida una invitación a quien lleva este servidor.',
  'The passkey was not taken. Try once more. If it is refused again, ask whoever runs this server to withdraw the account and to invite you anew.':
    'La llave de acceso no se aceptó. Inténtelo otra vez. Si se rechaza de nuevo, pida a quien lleva este servidor que retire la cuenta y le invite otra vez.',
  'The passkey could not be taken. Begin once more from the same link.':
    'La llave de acceso no se pudo aceptar. Empiece otra vez desde el mismo enlace.',
  'This invitation is no longer good. It works once, and for a day. Ask for a new one.':
    'Esta invitación ya no vale. Vale una vez y durante un día. Pida otra.',
  'This is the only passkey of the account, and it stays. Add another one first.':
    'Es la única llave de acceso de la cuenta, y se queda. Añada antes otra.',
  'There is no such passkey, or it was removed before.':
    'No existe esa llave de acceso, o ya se quitó antes.',
  'This device is not signed in any more.': 'Este dispositivo ya no tiene la sesión abierta.',
  'may open jobs': 'puede abrir trabajos',
  'may open sites and jobs, and sign records': 'puede abrir obras y trabajos, y firmar registros',
  'may open sites and jobs, sign records, invite and withdraw people, and see who read what':
    'puede abrir obras y trabajos, firmar registros, invitar y retirar personas, y ver quién leyó qué',
  '{role}: {what they may}': '{role}: {what they may}',
  Technician: 'Técnico',
  Supervisor: 'Supervisor',
  Administrator: 'Administrador',
  'Your account may not open jobs. Ask an administrator.':
    'Su cuenta no puede abrir trabajos. Pregunte a un administrador.',
  'Your account may not open sites: a supervisor may. Ask an administrator.':
    'Su cuenta no puede abrir obras: un supervisor sí. Pregunte a un administrador.',
  'Your account may not sign records: a supervisor may. Ask an administrator.':
    'Su cuenta no puede firmar registros: un supervisor sí. Pregunte a un administrador.',
  'Only an administrator sees and changes who has an account.':
    'Solo un administrador ve y cambia quién tiene una cuenta.',
  'A passkey belongs to a name, and you opened this page under an address of digits. Open it under the name of the server: whoever runs it knows the name. On the server’s own machine, localhost works.':
    'Una llave de acceso es de un nombre, y usted abrió esta página con una dirección de cifras. Ábrala con el nombre del servidor: quien lo lleva lo conoce. En la propia máquina del servidor sirve localhost.',
  'Passkeys work only over https. Open this page with https:// before the name of the server.':
    'Las llaves de acceso solo van por https. Abra esta página con https:// delante del nombre del servidor.',
  'This browser can use no passkeys. Use a newer one, or another device.':
    'Este navegador no puede usar llaves de acceso. Use uno más nuevo u otro dispositivo.',
  'No passkey was given. Try again. If the browser warned of the certificate of this server, trust it first: open /trust.':
    'No se dio ninguna llave de acceso. Inténtelo otra vez. Si el navegador avisó del certificado de este servidor, confíe antes en él: abra /trust.',
  'This device has a passkey of this account already.':
    'Este dispositivo ya tiene una llave de acceso de esta cuenta.',
  'Sign in with a passkey': 'Entrar con una llave de acceso',
  'Signed in as': 'Sesión abierta como',
  'Your invitation': 'Su invitación',
  'A passkey replaces a password: this device keeps it and asks for your finger, your face or your PIN. Nothing is typed, and nothing can be read off your screen.':
    'Una llave de acceso sustituye a una contraseña: este dispositivo la guarda y pide su dedo, su cara o su PIN. No se escribe nada, y nadie puede leer nada en su pantalla.',
  'Signatures that you give here will carry this name. If it is not yours, stop here.':
    'Las firmas que dé aquí llevarán este nombre. Si no es el suyo, no siga.',
  'Make the passkey': 'Crear la llave de acceso',
  'Your account': 'Su cuenta',
  'Anybody who reaches this server may open sites and jobs. Nobody signs in here.':
    'Quien llega a este servidor puede abrir obras y trabajos. Aquí nadie abre sesión.',
  'This device has shown the passphrase, and may open sites and jobs.':
    'Este dispositivo ya dio la contraseña, y puede abrir obras y trabajos.',
  'This device is asked for the passphrase when it opens a site or a job.':
    'A este dispositivo se le pide la contraseña cuando abre una obra o un trabajo.',
  'Who opens sites and jobs here, or signs, has an account. To join a job, the code is enough.':
    'Quien abre aquí obras y trabajos, o firma, tiene una cuenta. Para unirse a un trabajo basta el código.',
  'No account, or a lost device? Ask whoever runs this server for an invitation.':
    '¿Sin cuenta, o perdió el dispositivo? Pida una invitación a quien lleva este servidor.',
  'Sign in': 'Entrar',
  'Sign out': 'Salir',
  'Sign out on all devices': 'Salir en todos los dispositivos',
  Passkeys: 'Llaves de acceso',
  Made: 'Creada',
  'Not used since': 'Sin uso desde entonces',
  'Only under the name': 'Solo con el nombre',
  'Remove this passkey': 'Quitar esta llave de acceso',
  'Yes, remove this passkey': 'Sí, quitar esta llave de acceso',
  'Add a passkey': 'Añadir una llave de acceso',
  'For a second device. One passkey may be lost, and you still come in.':
    'Para un segundo dispositivo. Si se pierde una, usted sigue entrando.',
  'Signed in': 'Sesiones abiertas',
  'This device': 'Este dispositivo',
  'Sign this device out': 'Cerrar la sesión de este dispositivo',
  'This server has no such sign-in. Use a passkey, or ask whoever runs this server.':
    'Este servidor no tiene ese inicio de sesión. Use una llave de acceso, o pregunte a quien lleva este servidor.',
  'This sign-in was not begun on this device, took longer than five minutes, or was used before. Begin again.':
    'Este inicio de sesión no empezó en este dispositivo, tardó más de cinco minutos o ya se usó. Empiece de nuevo.',
  '{x} does not answer now. Try again in a minute. If it goes on, tell whoever runs this server.':
    '{x} no responde ahora. Pruebe de nuevo en un minuto. Si sigue así, dígaselo a quien lleva este servidor.',
  '{x} did not sign you in. Begin again. If it goes on, tell whoever runs this server.':
    '{x} no le ha dado entrada. Empiece de nuevo. Si sigue así, dígaselo a quien lleva este servidor.',
  '{x} knows you, but gives you no role here. Ask whoever looks after the accounts of your firm.':
    '{x} le conoce, pero no le da ningún papel aquí. Pregunte a quien lleva las cuentas de su empresa.',
  '{x} does not say your name, and signatures need one. Ask whoever looks after the accounts of your firm.':
    '{x} no dice su nombre, y las firmas lo necesitan. Pregunte a quien lleva las cuentas de su empresa.',
  'Sign in with {x}': 'Iniciar sesión con {x}',
  'Not signed in': 'Sesión no iniciada',
  'Signing in': 'Iniciando sesión',
  'Begin again': 'Empezar de nuevo',
  'Your firm gives you this account, and says what it may do here.':
    'Su empresa le da esta cuenta, y decide qué puede hacer aquí.',
};
