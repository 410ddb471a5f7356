/** Our mark: a leaning ladder, with all its rungs on one line of light. */
export const Mark = ({ size }: { size: number }) => (
  <svg class="mark" width={size} height={size} viewBox="0 0 48 48" aria-hidden="true">
    <g transform="rotate(35 24 24)">
      <path class="mark-rail" d="M15 4v40M33 4v40" />
      <path class="mark-rung" d="M15 12h18M15 20h18M15 28h18M15 36h18" />
      <path class="mark-light" d="M24 -4v56" />
    </g>
  </svg>
);
