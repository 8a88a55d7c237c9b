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
"%JAVA%" -XX:+UseSerialGC -Xshare:auto %OBLATE_JAVA_OPTIONS% -jar "%PROGRAM%" %*
exit /b %ERRORLEVEL%
