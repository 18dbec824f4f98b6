package blindlap.phone.browser;

import blindlap.desk.TestDay;
import blindlap.session.day.PhoneRole;
import java.nio.file.*;

public class Try {
  public static void main(String[] a) throws Exception {
    Path f = Files.createTempDirectory("try");
    Path out = Path.of("/tmp/ph");
    try (DayOnLaptop day = new DayOnLaptop(f.resolve("d.blindlap"), TestDay.SIXTEEN)) {
      PhoneBrowser r = PhoneBrowser.fresh(f, "rider", 390, 844);
      try {
        r.open(day.link(PhoneRole.RIDER));
        Thread.sleep(1500);
        r.picture(out.resolve("r1.png"));
        System.out.println(r.words());
        System.out.println(r.complaints());
        day.handOver(0);
        Thread.sleep(3000);
        r.picture(out.resolve("r2.png"));
        System.out.println(r.words());
        r.touch("Warm-up lap ridden");
        Thread.sleep(1500);
        day.returned(0);
        day.handOver(1);
        Thread.sleep(3000);
        r.picture(out.resolve("r3.png"));
        System.out.println(r.words());
        System.out.println(r.complaints());
        r.touch(r.find("[id='q-grip in the rocks']"), 0.62);
        Thread.sleep(800);
        r.picture(out.resolve("r4.png"));
        System.out.println(r.words());
        System.out.println(day.state().laps());
        r.touch("Shock K");
        Thread.sleep(800);
        r.picture(out.resolve("r5.png"));
        PhoneBrowser s = PhoneBrowser.fresh(f, "starter", 390, 844);
        try {
          s.open(day.link(PhoneRole.STARTER));
          Thread.sleep(2500);
          s.picture(out.resolve("s1.png"));
          System.out.println(s.words());
          System.out.println(s.complaints());
          s.touch("Start");
          Thread.sleep(3000);
          s.picture(out.resolve("s2.png"));
          s.touch("Stop");
          Thread.sleep(1200);
          s.picture(out.resolve("s3.png"));
          System.out.println(s.words());
          System.out.println(day.state().laps());
        } finally {
          s.close();
        }
      } finally {
        r.close();
      }
    }
  }
}
