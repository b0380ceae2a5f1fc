interface Props {
  readonly label: string;
  /** File name endings, such as ".json". */
  readonly accept: string;
  readonly onFile: (file: File) => void;
}

/** Opens the system's file chooser. */
export function FileButton({ label, accept, onFile }: Props) {
  return (
    <label class="file">
      <input
        type="file"
        accept={accept}
        onChange={(event) => {
          const file = event.currentTarget.files?.[0];
          if (file !== undefined) onFile(file);
          event.currentTarget.value = "";
        }}
      />
      <span class="button">{label}</span>
    </label>
  );
}
