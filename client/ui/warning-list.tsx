import './warning-list.css';

/** Warnings that somebody must see before going on, under one heading. Nothing where there are none. */
export const WarningList = ({ title, texts }: { title: string; texts: readonly string[] }) =>
  texts.length === 0 ? null : (
    <section class="warning-list" aria-label={title}>
      <h2>{title}</h2>
      <ul>
        {texts.map((text) => (
          <li key={text}>{text}</li>
        ))}
      </ul>
    </section>
  );
