package blindlap.screen;

import java.util.List;
import javafx.beans.property.SimpleStringProperty;
import javafx.collections.FXCollections;
import javafx.scene.control.TableColumn;
import javafx.scene.control.TableView;

/** Tables with invented content. */
final class Tables {
  private Tables() {}

  static TableView<List<String>> settings() {
    TableView<List<String>> table = new TableView<>();
    String[] heads = {"setting", "Shock K", "Shock L"};
    for (int i = 0; i < heads.length; i++) {
      int column = i;
      TableColumn<List<String>, String> each = new TableColumn<>(heads[i]);
      each.setCellValueFactory(row -> new SimpleStringProperty(row.getValue().get(column)));
      each.setPrefWidth(180);
      table.getColumns().add(each);
    }
    table.setItems(
        FXCollections.observableArrayList(
            List.of("Compression, clicks", "9", "6"), List.of("Rebound, clicks", "7", "7")));
    table.setPrefHeight(160);
    return table;
  }
}
