/// <reference types="vite-plugin-pwa/client" />
/** What the build puts in. */
interface ImportMetaEnv {
  /** Version of the package. */
  readonly APP_VERSION: string;
  /** Whether public/practice was there when it was built. */
  readonly HAS_PRACTICE: boolean;
}
