/** Why the last try failed, for everybody to see and hear. Nothing while there is no failure. */
export const Failure = ({ text }: { text: string | undefined }) =>
  text === undefined ? null : (
    <p class="failure" role="alert">
      {text}
    </p>
  );
