import type { Sentences } from '../translate.ts';

/** Of a job whose log one phone keeps alone. */
export const BROUGHT: Sentences = {
  'One phone alone kept the record up to here. From here on the server keeps it':
    'Hasta aquí un solo teléfono guardó el registro. Desde aquí lo guarda el servidor',
  'Kept on this phone only': 'Solo en este teléfono',
  'Only this phone has the record. If the phone is lost or its browser is cleared, the record is lost. Bring it to the server as soon as there is a link.':
    'Solo este teléfono tiene el registro. Si se pierde el teléfono o se vacía su navegador, el registro se pierde. Llévelo al servidor en cuanto haya conexión.',
  'Bring the record to the server': 'Llevar el registro al servidor',
  'Bringing the record to the server': 'Llevando el registro al servidor',
  'No server at hand?': '¿No hay servidor a mano?',
  'This phone can keep the record alone, and bring it to the server later. Until then nobody else can see it, and it cannot be signed. The record says that one phone alone kept it.':
    'Este teléfono puede guardar el registro solo, y llevarlo al servidor más tarde. Hasta entonces nadie más puede verlo, y no se puede firmar. El registro dice que un solo teléfono lo guardó.',
  'Begin without the server': 'Empezar sin el servidor',
  'This needs the server. Bring the record there first.':
    'Esto necesita el servidor. Lleve primero el registro allí.',
  'This record is open in another window of this phone, or on its way to the server. Close the other window, or bring the record to the server, then load this page again.':
    'Este registro está abierto en otra ventana de este teléfono, o de camino al servidor. Cierre la otra ventana, o lleve el registro al servidor, y después cargue esta página de nuevo.',
  'This browser cannot keep the record. Leave private browsing or make room on the phone, then try again.':
    'Este navegador no puede guardar el registro. Salga de la navegación privada o haga sitio en el teléfono, y pruebe otra vez.',
  'This phone could not keep that. Make room on it. It is tried again.':
    'Este teléfono no pudo guardar eso. Haga sitio en él. Se intentará otra vez.',
  'The record that this phone kept is damaged or gone. Show this screen to your supervisor, and do not count on the alignment.':
    'El registro que guardó este teléfono está dañado o no está. Muestre esta pantalla a su supervisor, y no cuente con la alineación.',
  'The record is not whole': 'El registro no está completo',
  'Go on with it on this phone': 'Seguir con él en este teléfono',
  'The record stays on this phone, and on its first page. Nobody else has it until you bring it to the server.':
    'El registro queda en este teléfono, en su primera página. Nadie más lo tiene hasta que lo lleve al servidor.',
  'Only this phone has the record. Bring it to the server: it is in the menu.':
    'Solo este teléfono tiene el registro. Llévelo al servidor: está en el menú.',
  'The record that this phone kept is damaged, and the server cannot take it. Show this to your supervisor.':
    'El registro que guardó este teléfono está dañado, y el servidor no puede aceptarlo. Muéstreselo a su supervisor.',
  'The record that this phone kept holds entries that only a server writes. The server cannot take it. Show this to your supervisor.':
    'El registro que guardó este teléfono tiene entradas que solo escribe un servidor. El servidor no puede aceptarlo. Muéstreselo a su supervisor.',
  'The server has another record under this number. It cannot take this one. Show this to your supervisor.':
    'El servidor tiene otro registro con este número. No puede aceptar este. Muéstreselo a su supervisor.',
  'This phone can keep the record, and bring it to the server later. The other phone reaches it over the same Wi-Fi, by square codes that the two show each other. Until then nobody else can see the record, and it cannot be signed.':
    'Este teléfono puede guardar el registro, y llevarlo al servidor más tarde. El otro teléfono lo alcanza por la misma red wifi, con códigos cuadrados que los dos se muestran. Hasta entonces nadie más puede ver el registro, y no se puede firmar.',
  'The server takes no record of a practice.': 'El servidor no acepta registros de un ejercicio.',
  "The record stays on the panel's phone. To come back, meet it again: scan its code.":
    'El registro queda en el teléfono de la central. Para volver, encuéntrelo de nuevo: escanee su código.',
};
