/// <reference types="vite-plugin-pwa/client" />
/** What the build puts in. */
interface ImportMetaEnv {
  /** Version of the package. */
  readonly APP_VERSION: string;
  /** Digest of the code that judges protocols: a proof holds for one state of it. */
  readonly CHECKER_DIGEST: string;
  /** Whether public/practice was there when it was built. */
  readonly HAS_PRACTICE: boolean;
}
