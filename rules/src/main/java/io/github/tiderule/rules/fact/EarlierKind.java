package io.github.tiderule.rules.fact;

/** How an earlier season was no ordinary one. */
public enum EarlierKind implements Worded {
  /** It stopped before ovulation; the true season came weeks later. */
  BROKEN_OFF("broken-off"),
  /** Progesterone rose and fell back to base without an ovulation. */
  NO_OVULATION("no-ovulation"),
  /** Nobody saw it; its day of first blood is a guess. */
  SILENT("silent");

  private final String word;

  EarlierKind(String word) {
    this.word = word;
  }

  @Override
  public String word() {
    return word;
  }
}
