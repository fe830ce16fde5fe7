package io.github.tiderule.api.paper;

import com.openhtmltopdf.extend.FSTextBreaker;
import java.text.BreakIterator;
import java.util.Locale;

/** Where a line may break: by Unicode's rules, but never within a time of the clock. */
final class LineBreaks implements FSTextBreaker {

  private final BreakIterator breaks = BreakIterator.getLineInstance(Locale.ENGLISH);

  private String words = "";

  @Override
  public int next() {
    int at = breaks.next();
    while (at != BreakIterator.DONE && isWithinTime(at)) {
      at = breaks.next();
    }
    return at;
  }

  private boolean isWithinTime(int at) {
    return at > 1
        && at < words.length()
        && words.charAt(at - 1) == ':'
        && Character.isDigit(words.charAt(at - 2))
        && Character.isDigit(words.charAt(at));
  }

  @Override
  public void setText(String text) {
    words = text;
    breaks.setText(text);
  }
}
