import type { Translation } from '@/lib/ui/messages/translation';

/** See the English words of the same name. */
export const trust: Translation['trust'] = {
  title: 'Confiar en este servidor',
  why: 'Un navegador solo da la cámara, y el trabajo sin red, a un servidor en el que confía. El servidor de esta planta hizo su propia autoridad certificadora; un equipo que confía en ella confía en este servidor y en nada fuera de la planta: solo puede responder por direcciones de redes privadas y por el nombre de este servidor.',
  once: 'Se hace una vez en cada equipo y tarda cerca de un minuto.',
  download: {
    title: '1. Descargue la autoridad certificadora',
    link: 'Descargar el certificado',
    until: 'Vale hasta',
  },
  compare: {
    title: '2. Compare la huella digital',
    text: 'Debe ser la que el servidor mostró al arrancar. El equipo la muestra (como SHA-256) en los detalles del certificado. Si no es igual, alguien está entre usted y el servidor: no lo instale y pregunte a quien lleva el servidor.',
  },
  install: {
    title: '3. Instálelo',
    android: {
      name: 'Android',
      first:
        'Abra Configuración y busque ahí “certificado de CA” (está en Seguridad, Más opciones de seguridad, Instalar desde el almacenamiento).',
      second:
        'Elija Certificado de CA, acepte la advertencia con Instalar de todos modos y dé el PIN del equipo.',
      third: 'Elija el archivo reelkin-authority.crt de las descargas.',
    },
    ipados: {
      name: 'iPad y iPhone',
      first:
        'Descárguelo con Safari y permita el perfil. Abra Configuración, después Perfil descargado, e Instalar.',
      second: 'Abra Configuración, General, Información, Configuración de confianza de los certificados.',
      third: 'Active la confianza total para el certificado que empieza con “Reelkin on”.',
    },
    windows: {
      name: 'Windows',
      first: 'Abra el archivo descargado y elija Instalar certificado, Equipo local.',
      second:
        'Elija Colocar todos los certificados en el siguiente almacén: Entidades de certificación raíz de confianza.',
      third: 'Termine y abra el navegador otra vez.',
    },
    other: {
      name: 'Linux, y navegadores con almacén propio',
      first:
        'Chromium: Configuración, Privacidad y seguridad, Seguridad, Administrar certificados; impórtelo como de confianza.',
      second:
        'Firefox: Configuración, Privacidad y seguridad, Ver certificados, Autoridades, Importar; confíe en él para sitios web.',
      third: 'Los equipos administrados lo reciben de su administración.',
    },
    clock:
      'La fecha del equipo debe ser correcta, con un año de margen más o menos; si no, tomará por falso todo certificado.',
  },
  open: {
    title: '4. Abra Reelkin',
    link: 'Abrir {address}',
    warning: 'Si el navegador sigue advirtiendo de la conexión, el equipo aún no confía en la autoridad.',
  },
};
