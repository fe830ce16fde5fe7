package io.github.tiderule.api.paper;

import com.openhtmltopdf.extend.FSTextBreaker;
import java.text.BreakIterator;
import java.util.Locale;

/** Where a line may break, by Unicode's rules alone: never within a time of the clock. */
final class LineBreaks implements FSTextBreaker {

  private final BreakIterator breaks = BreakIterator.getLineInstance(Locale.ENGLISH);

  @Override
  public int next() {
    return breaks.next();
  }

  @Override
  public void setText(String text) {
    breaks.setText(text);
  }
}
