@echo off
rem Starts Oblate. Builds it first when nothing is built yet: needs JDK 17 and Maven, nothing else.
setlocal
set "HOME_DIR=%~dp0"
set "PROGRAM=%HOME_DIR%app\launcher\target\oblate\oblate.jar"
set "JAVA=java"
if defined JAVA_HOME if exist "%JAVA_HOME%\bin\java.exe" set "JAVA=%JAVA_HOME%\bin\java.exe"

if exist "%PROGRAM%" goto run
where mvn >nul 2>nul
if errorlevel 1 (
  echo oblate: nothing is built yet and Maven is not installed; install Maven 3.8 or newer 1>&2
  exit /b 2
)
echo Building Oblate; this is done once and takes a minute or two. 1>&2
pushd "%HOME_DIR%"
call mvn -B -ntp -q -Dquick -DskipTests package 1>&2
set "BUILT=%ERRORLEVEL%"
popd
if not "%BUILT%"=="0" (
  echo oblate: the build failed; see above 1>&2
  exit /b 2
)

:run
rem Classes that were loaded once are kept in a file for the next starts. It is made at the end of the first window, in a folder for things that
rem may be deleted; where that cannot be, the program starts as it would without. A file that no longer fits is left aside by Java itself.
set "QUIET=-Xlog:cds=off -Xlog:cds+dynamic=off"
set "CACHE=%LOCALAPPDATA%\Oblate"
if defined OBLATE_SETTINGS set "CACHE=%OBLATE_SETTINGS%\cache"
set "STAMP="
for %%F in ("%PROGRAM%") do set "STAMP=%%~zF-%%~tF"
set "STAMP=%STAMP:/=%"
set "STAMP=%STAMP::=%"
set "STAMP=%STAMP:.=%"
set "STAMP=%STAMP: =%"
set "CLASSES=%CACHE%\classes-%STAMP%.jsa"
if exist "%CLASSES%" goto shared
set "WINDOW="
if "%~1"=="" set "WINDOW=1"
if "%~1"=="--archive" set "WINDOW=1"
if not defined WINDOW goto plain
if not exist "%CACHE%" mkdir "%CACHE%" 2>nul
if not exist "%CACHE%" goto plain
del /q "%CACHE%\classes-*.jsa" 2>nul
"%JAVA%" -XX:+UseSerialGC -Xshare:auto %QUIET% "-XX:ArchiveClassesAtExit=%CLASSES%" %OBLATE_JAVA_OPTIONS% -jar "%PROGRAM%" %*
exit /b %ERRORLEVEL%

:shared
"%JAVA%" -XX:+UseSerialGC -Xshare:auto %QUIET% "-XX:SharedArchiveFile=%CLASSES%" %OBLATE_JAVA_OPTIONS% -jar "%PROGRAM%" %*
exit /b %ERRORLEVEL%

:plain
"%JAVA%" -XX:+UseSerialGC -Xshare:auto %OBLATE_JAVA_OPTIONS% -jar "%PROGRAM%" %*
exit /b %ERRORLEVEL%
