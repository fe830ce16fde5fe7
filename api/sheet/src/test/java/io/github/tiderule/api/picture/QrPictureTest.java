package io.github.tiderule.api.picture;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.is;
import static org.hamcrest.Matchers.not;

import com.google.zxing.BarcodeFormat;
import com.google.zxing.BinaryBitmap;
import com.google.zxing.LuminanceSource;
import com.google.zxing.MultiFormatReader;
import com.google.zxing.NotFoundException;
import com.google.zxing.RGBLuminanceSource;
import com.google.zxing.Result;
import com.google.zxing.common.HybridBinarizer;
import io.github.tiderule.api.picture.svg.Raster;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import javax.imageio.ImageIO;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Read back by a reader of another make, from its points. */
class QrPictureTest {

  @ParameterizedTest
  @ValueSource(
      strings = {
        "http://127.0.0.1:8737/",
        "webcal://kennel.example:8737/calendar/0123456789abcdefghijABCDEFGHIJ0123456789-_A/d.ics"
      })
  void isReadAsWhatItSays(String text) throws IOException, NotFoundException {
    String svg = QrPicture.svg(text, "A <code> \"here\"");
    Drawn.of(svg);
    assertThat(svg, containsString("aria-label=\"A &lt;code&gt;"));
    assertThat("the theme of a page must not turn it round", svg, not(containsString("class=")));
    BufferedImage image = ImageIO.read(new ByteArrayInputStream(Raster.png(svg, 400)));
    int[] points =
        image.getRGB(0, 0, image.getWidth(), image.getHeight(), null, 0, image.getWidth());
    LuminanceSource source = new RGBLuminanceSource(image.getWidth(), image.getHeight(), points);
    Result read = new MultiFormatReader().decode(new BinaryBitmap(new HybridBinarizer(source)));
    assertThat(read.getText(), is(text));
    assertThat(read.getBarcodeFormat(), is(BarcodeFormat.QR_CODE));
  }
}
