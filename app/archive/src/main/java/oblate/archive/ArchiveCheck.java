package oblate.archive;
import java.nio.file.Path; import java.time.Clock; import oblate.base.Progress;
final class ArchiveCheck { ArchiveCheck(Archive a, ArchiveFolder p, Catalog c, Clock k){} CheckReport run(boolean r, Progress p){ throw new UnsupportedOperationException(); } }
