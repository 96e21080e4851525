/** How this device shows itself: language and colours. Every choice is kept at once and can be taken back by another. */
import type { PageProps } from "../pages/screens";
import { Choice, Section } from "../prepare/Field";
import { useShared } from "../useModel";
import { languageChoices } from "../words/fetchedWords";
import { Device } from "./Device";
import styles from "./Settings.module.css";
import { themes } from "./settings";

export function SettingsScreen({ view }: PageProps) {
  const { words, settings, asks } = useShared();
  const w = words.settings;
  return (
    <>
      <Section title={w.look}>
        <div className={styles.choices}>
          <Choice
            label={words.prepare.language}
            hint={w.languageHint}
            value={settings.language}
            options={languageChoices}
            onChange={(language) => asks.changeSettings({ language })}
          />
          <Choice
            label={w.theme}
            hint={w.themeHint}
            value={settings.theme}
            options={themes.map((theme) => [theme, w.themes[theme]] as const)}
            onChange={(theme) => asks.changeSettings({ theme })}
          />
        </div>
      </Section>
      <div role="alert">{view.trouble?.code === "not-fetched" && <p>{words.pages.partNotFetched}</p>}</div>
      <Section title={w.device}>
        <Device />
      </Section>
      <p className={styles.version}>{w.version(import.meta.env.APP_VERSION)}</p>
    </>
  );
}
