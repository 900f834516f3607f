using System.Reflection;
using Microsoft.Data.Sqlite;
using Studio.Api;
using Studio.Api.Http;
using Studio.Core.Catalogue;

try
{
    var builder = WebApplication.CreateBuilder(args);
    // The build starts the program only to write down its routes: no data then, no jobs.
    var describing = Assembly.GetEntryAssembly()?.GetName().Name == "GetDocument.Insider";
    builder.AddStudio();
    var app = builder.Build();
    app.UseStudio();
    if (!describing)
        await app.OpenStudioAsync();
    await app.RunAsync();
    return 0;
}
catch (CatalogueException damaged)
{
    await Console.Error.WriteLineAsync("The catalogue is damaged, so the studio stays closed:");
    foreach (var error in damaged.Errors)
        await Console.Error.WriteLineAsync($"  {error}");
    return 2;
}
catch (SettingException wrong)
{
    await Console.Error.WriteLineAsync(wrong.Message);
    return 4;
}
catch (SqliteException damaged) when (damaged.SqliteErrorCode is 11 or 26)
{
    // SQLITE_CORRUPT and SQLITE_NOTADB
    await Console.Error.WriteLineAsync(
        $"The database in the data folder is damaged, so the studio stays closed: {damaged.Message} Put back the whole folder from the last backup."
    );
    return 5;
}
catch (IOException taken)
    when (taken.InnerException is Microsoft.AspNetCore.Connections.AddressInUseException)
{
    await Console.Error.WriteLineAsync(
        "The address is taken: another program, or another studio, listens there. Stop it, or choose another address with --urls http://127.0.0.1:5081."
    );
    return 3;
}
