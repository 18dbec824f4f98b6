package blindlap.recording;

import io.jenetics.jpx.GPX;
import java.nio.charset.StandardCharsets;

/**
 * What of a GPX file matters, written anew for the library that reads it: places, times, how far
 * off they may be, and where segments begin. Whatever else recorders add, and however much, the
 * library never sees.
 */
final class GpxCopy {
  private final GPX.Version version;
  private final StringBuilder text = new StringBuilder();

  /**
   * @param version that the file states
   */
  GpxCopy(String version) {
    this.version = version.equals("1.0") ? GPX.Version.V10 : GPX.Version.V11;
    text.append("<gpx version=\"").append(this.version.getValue());
    text.append("\" creator=\"\" xmlns=\"").append(this.version.getNamespaceURI()).append("\">");
  }

  void open(String name) {
    text.append('<').append(name).append('>');
  }

  void close(String name) {
    text.append("</").append(name).append('>');
  }

  /** In GPX longitudes end at 180 degrees; the other habit of writing west goes on to 360. */
  void point(Position at) {
    double east = at.longitude() >= 180 ? at.longitude() - 360 : at.longitude();
    text.append("<trkpt lat=\"").append(at.latitude()).append("\" lon=\"").append(east);
    text.append("\">");
  }

  void element(String name, String value) {
    open(name);
    text.append(value.replace("&", "&amp;").replace("<", "&lt;"));
    close(name);
  }

  GPX.Version version() {
    return version;
  }

  byte[] bytes() {
    return (text + "</gpx>").getBytes(StandardCharsets.UTF_8);
  }
}
