/** Words of the page by which a device comes to trust this server. */
export const trust = {
  title: 'Trust this server',
  why: 'The camera, and working without a network, are given by a browser only to a server that it trusts. This plant’s server has made a certificate authority of its own; a device that trusts it trusts this server and nothing outside of the plant: it can vouch for addresses of private networks and for the name of this server only.',
  once: 'It is done once for each device, and takes about a minute.',
  download: {
    title: '1. Download the certificate authority',
    link: 'Download the certificate',
    until: 'It is good until',
  },
  compare: {
    title: '2. Compare the fingerprint',
    text: 'This must be what the server printed when it started. The device shows it (as SHA-256) with the certificate’s details. If it differs, somebody stands between you and the server: do not install it, and ask those who run the server.',
  },
  install: {
    title: '3. Install it',
    android: {
      name: 'Android',
      first:
        'Open Settings, and search there for “CA certificate” (it stands under Security, More security settings, Install from device storage).',
      second: 'Choose CA certificate, confirm the warning with Install anyway, and give the device’s PIN.',
      third: 'Choose the file reelkin-authority.crt from the downloads.',
    },
    ipados: {
      name: 'iPad and iPhone',
      first:
        'Download it with Safari, and allow the profile. Open Settings, then Profile Downloaded, and Install.',
      second: 'Open Settings, General, About, Certificate Trust Settings.',
      third: 'Switch on full trust for the certificate that begins with “Reelkin on”.',
    },
    windows: {
      name: 'Windows',
      first: 'Open the downloaded file, and choose Install Certificate, Local Machine.',
      second: 'Choose Place all certificates in the following store: Trusted Root Certification Authorities.',
      third: 'Finish, and start the browser again.',
    },
    other: {
      name: 'Linux, and browsers with a store of their own',
      first:
        'Chromium: Settings, Privacy and security, Security, Manage certificates, and import it as trusted.',
      second:
        'Firefox: Settings, Privacy & Security, View Certificates, Authorities, Import, trust it for websites.',
      third: 'Devices under management get it by their management.',
    },
    clock:
      'The date of the device must be right to within a year or so, or it takes every certificate for a wrong one.',
  },
  open: {
    title: '4. Open Reelkin',
    link: 'Open {address}',
    warning: 'If the browser still warns of the connection, the device does not trust the authority yet.',
  },
} as const;
