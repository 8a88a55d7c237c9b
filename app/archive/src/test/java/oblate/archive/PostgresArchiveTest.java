/* SPDX-License-Identifier: Apache-2.0 */
package oblate.archive;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.List;
import oblate.archive.FilingOutcome.AlreadyThere;
import oblate.base.ProblemException;
import oblate.base.Progress;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;

/** The same promises with a group's catalog on a real PostgreSQL, and those a group has alone. */
@Tag("postgres")
class PostgresArchiveTest extends ArchiveContract {
    @RegisterExtension
    static final PostgresServer SERVER = new PostgresServer();

    @Override
    Archive open(Path folder) {
        return Archive.openGroup(folder, SERVER.newCatalog(), Desk.PLANETS, Desk.CLOCK);
    }

    @Test
    void twoObserversShareOneCatalog() throws IOException {
        GroupCatalog group = SERVER.newDatabase();
        Path shared = work.resolve("shared");
        Path file = Desk.picture(work.resolve("in"), "jupiter-20310324T210530Z.png", 1);
        try (Archive one = Archive.openGroup(shared, group, Desk.PLANETS, Desk.CLOCK);
                Archive two = Archive.openGroup(shared, group, Desk.PLANETS, Desk.CLOCK)) {
            Desk.file(one, Entries.NOTHING_SAID, file);
            List<FilingOutcome> again = Desk.file(two, Entries.NOTHING_SAID, file);
            assertThat(again).hasOnlyElementsOfType(AlreadyThere.class);
            assertThat(two.pictures(PictureSearch.all())).isEqualTo(one.pictures(PictureSearch.all()));
            assertThat(two.check(true, Progress.SILENT).isClean()).isTrue();
            assertThatThrownBy(() -> two.backup(work.resolve("g.zip"), Progress.SILENT))
                    .isInstanceOfSatisfying(
                            ProblemException.class, e -> assertThat(e.kind()).isEqualTo(ArchiveProblem.NOT_FOR_GROUP));
        }
    }

    @Test
    void theCatalogItselfRefusesToChangeWhatWasMeasured() throws IOException, SQLException {
        GroupCatalog group = SERVER.newCatalog();
        try (Archive archive = Archive.openGroup(work.resolve("g"), group, Desk.PLANETS, Desk.CLOCK)) {
            ArchivedPicture picture = Desk.filed(archive, work.resolve("in"), "20310324T210530Z", 1);
            archive.keepFit(picture.id(), Desk.fit(20), "DE405", "t");
        }
        try (Connection connection = DriverManager.getConnection(group.jdbcUrl(), group.user(), group.password());
                Statement statement = connection.createStatement()) {
            assertThatThrownBy(() -> statement.execute("update disc_fit set centre_x_px = 1"))
                    .hasMessageContaining("superseded");
            assertThatThrownBy(() -> statement.execute("delete from history")).hasMessageContaining("never changed");
        }
    }

    @Test
    void aDatabaseOfSomethingElseOrOneThatIsNotThereIsRefused() throws SQLException {
        GroupCatalog group = SERVER.newDatabase();
        try (Connection connection = DriverManager.getConnection(group.jdbcUrl(), group.user(), group.password());
                Statement statement = connection.createStatement()) {
            statement.execute("create table bills (amount integer)");
        }
        assertProblem(
                ArchiveProblem.BROKEN_CATALOG,
                () -> Archive.openGroup(work.resolve("x"), group, Desk.PLANETS, Desk.CLOCK));
        GroupCatalog nowhere = new GroupCatalog("jdbc:postgresql://localhost:1/none?password=hidden", "u", "secret");
        assertThatThrownBy(() -> Archive.openGroup(work.resolve("y"), nowhere, Desk.PLANETS, Desk.CLOCK))
                .isInstanceOfSatisfying(
                        ProblemException.class, e -> assertThat(e.kind()).isEqualTo(ArchiveProblem.GROUP_UNREACHABLE))
                .hasMessageNotContainingAny("hidden", "secret");
        assertThat(nowhere.toString()).doesNotContain("hidden").doesNotContain("secret");
    }
}
