import classes from './messages.module.css';

/** A message as a mail program shows it; nothing in it can run or reach out. */
export const Preview = ({ html, title }: { html: string; title: string }) => (
  <iframe className={classes.preview} srcDoc={html} sandbox="" title={title} />
);
