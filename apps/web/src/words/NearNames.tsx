/** Marked wherever somebody is chosen from a list: whom they are easily taken for. */
export const NearNames = ({ names }: { names: readonly string[] }) =>
  names.length === 0 ? null : (
    <div>
      <span aria-hidden="true">▲ </span>
      <strong>easily mistaken</strong> for {names.join('; ')}
    </div>
  );
