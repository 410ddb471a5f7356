import type { Sentences } from '../translate.ts';

/** What was refused, and why. */
export const REFUSALS: Sentences = {
  'That entry is not a reading that still counts. Nothing was changed.':
    'Esa entrada no es una lectura que siga valiendo. No se cambió nada.',
  'That entry cannot be taken back, or already was.': 'Esa entrada no se puede retirar, o ya se retiró.',
  'That entry is not an open issue. Nothing was changed.':
    'Esa entrada no es una incidencia abierta. No se cambió nada.',
  'There is no reading to accept yet.': 'Todavía no hay lectura que aceptar.',
  'Accept the alignment first. What is written for the hand-over is about an accepted pair.':
    'Acepte primero la alineación. Lo que se escribe para la entrega trata de una pareja aceptada.',
  'This job is not practice: its beam is real. Nothing was written down.':
    'Este trabajo no es una práctica: su haz es real. No se apuntó nada.',
  'This is practice on a simulated pair. It is no record, and nobody signs it.':
    'Esto es una práctica con una pareja simulada. No es un registro, y nadie lo firma.',
  'This visit has no such step. Nothing was written down.':
    'Esta visita no tiene ese paso. No se apuntó nada.',
  'Nothing is filled in. Nothing was written down.': 'No hay nada rellenado. No se apuntó nada.',
  'That no longer stands: it was struck out or replaced meanwhile. Read the record again.':
    'Eso ya no vale: entretanto se tachó o se sustituyó. Lea otra vez el registro.',
  'Nothing is missing. Say "accept": no override is needed.':
    'No falta nada. Diga «acepto»: no hace falta forzar nada.',
  'There is nothing to sign yet.': 'Todavía no hay nada que firmar.',
  'The record has grown while you read it. Read what is new, then sign again.':
    'El registro ha crecido mientras lo leía. Lea lo nuevo y firme otra vez.',
  'The typed signature is not the name of the signer. Type the name as it stands above, or draw the signature.':
    'La firma escrita no es el nombre de quien firma. Escriba el nombre como está arriba, o dibuje la firma.',
  '{x} has signed this record already. A second signature is for another person.':
    '{x} ya ha firmado este registro. La segunda firma es para otra persona.',
  'The comparison with the other pairs of the site is not read yet. Wait a moment, then sign.':
    'La comparación con las otras parejas de la obra aún no está leída. Espere un momento y firme.',
  'The findings of the site have changed while you read. Read what is new, then sign again.':
    'Los hallazgos de la obra han cambiado mientras leía. Lea lo nuevo y firme otra vez.',
  '"{x}" is not a reading. Type what the meter showed, such as 142.':
    '"{x}" no es una lectura. Escriba lo que mostró el medidor, como 142.',
  'A site has at most {n} pairs. Open another site for the rest.':
    'Una obra tiene como mucho {n} parejas. Abra otra obra para el resto.',
  'There is no pair {x} on this site. Nothing was changed.':
    'No hay ninguna pareja {x} en esta obra. No se cambió nada.',
  'The plan of {x} has no meter. Choose the meter for its readings.':
    'El plan de {x} no tiene medidor. Elija el medidor de sus lecturas.',
  'There is no such time zone. Give a name like "Europe/London" or "UTC".':
    'Esa zona horaria no existe. Dé un nombre como "Europe/London" o "UTC".',
  'Two of these pairs have the id {x}.': 'Dos de estas parejas tienen el nombre {x}.',
  'The ids {x} and {x1} differ only in capital letters. Give one of them another id.':
    'Los nombres {x} y {x1} solo se distinguen en las mayúsculas. Dé otro a uno de ellos.',
};
