package oblate.archive;
import java.nio.file.Path; import oblate.base.Progress;
final class BackupWriting { BackupWriting(Archive a, Catalog c){} BackupReport write(Path f, Progress p){ throw new UnsupportedOperationException(); } }
