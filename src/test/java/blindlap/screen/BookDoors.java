package blindlap.screen;

import java.util.List;
import java.util.function.BiConsumer;
import javafx.scene.Node;
import javafx.scene.Scene;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Hyperlink;
import javafx.scene.layout.Pane;

/** Walks through every door of the Notebook page, with every choice of every room. */
final class BookDoors {
  private static final String FIELD = "The field";

  private final Scene scene;
  private final BiConsumer<Scene, String> looker;
  private int told;

  /**
   * @param scene a window that shows the Notebook page
   * @param looker is shown the window with the moment's name
   */
  BookDoors(Scene scene, BiConsumer<Scene, String> looker) {
    this.scene = scene;
    this.looker = looker;
  }

  void walk() {
    for (int i = 0; i < doors().size(); i++) {
      String door = doors().get(i).getText();
      doors().get(i).fire();
      look(door);
      for (Node box : scene.getRoot().lookupAll(".combo-box")) {
        everyChoice((ComboBox<?>) box, door);
      }
      EveryPage.buttons(scene, "Back to the notebook").fire();
    }
    if (told < 3) {
      throw new AssertionError("no field of several days was walked");
    }
  }

  private void look(String moment) {
    looker.accept(scene, moment);
    boolean table = scene.getRoot().lookup("RecordTable") != null;
    boolean picture = scene.getRoot().lookup("PlotView") != null;
    if (moment.startsWith(FIELD) && table && picture) {
      told++;
    }
  }

  private List<Hyperlink> doors() {
    return ((Pane) scene.getRoot().lookup(".doors"))
        .getChildren().stream().map(Hyperlink.class::cast).toList();
  }

  private void everyChoice(ComboBox<?> box, String moment) {
    for (int i = 0; i < box.getItems().size(); i++) {
      box.getSelectionModel().select(i);
      look(moment + ", choice " + i);
    }
  }
}
