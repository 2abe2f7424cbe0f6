import type { NextConfig } from "next";

const config: NextConfig = {
  distDir: process.env.SPRINGLINE_DIST ?? ".next",
  reactStrictMode: true,
  poweredByHeader: false,
  agentRules: false,
  // Each of these must exist once in the process: Next's bundle and the server's share them.
  serverExternalPackages: ["better-sqlite3", "yjs", "y-protocols", "lib0", "pino", "ws", "better-auth", "nodemailer"],
  outputFileTracingRoot: import.meta.dirname,
  // `npm test` checks the types of everything; a second look while building would only cost a minute.
  typescript: { ignoreBuildErrors: true },
  experimental: {
    // A build that ends sooner is worth more here than a next one that starts warmer.
    turbopackFileSystemCacheForBuild: false,
    // Asked as the server starts: one of many studios on a machine loads a page when somebody comes.
    preloadEntriesOnStart: process.env.SPRINGLINE_LAZY_PAGES !== "1",
  },
  turbopack: { root: import.meta.dirname },
};

export default config;
