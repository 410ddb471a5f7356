import type { Sentences } from '../translate.ts';

/** Who read what: the page of an administrator. */
export const WHO_READ: Sentences = {
  'Who read what is for an administrator with an account. This server has no accounts, and knows readers by their links alone.':
    'Quién leyó qué es para la administración con una cuenta. Este servidor no tiene cuentas y conoce a quien lee solo por su enlace.',
  'One line for each reader, record and hour. Who is not signed in is known only by the link that was used.':
    'Una línea por cada persona que lee, registro y hora. De quien no ha iniciado sesión solo se conoce el enlace que usó.',
  'Nothing was read yet.': 'Todavía no se ha leído nada.',
  Record: 'Registro',
  'Board of the site': 'Tablero de la obra',
  'Report as PDF': 'Informe en PDF',
  Export: 'Exportación',
  'Who read what': 'Quién leyó qué',
  'A name that was deleted': 'Un nombre que se borró',
  'Only an administrator sees who read what.': 'Solo la administración ve quién leyó qué.',
  'Show all records': 'Mostrar todos los registros',
  'Show older ones': 'Mostrar anteriores',
  'In the hour from': 'En la hora desde',
  'Only this record': 'Solo este registro',
};
