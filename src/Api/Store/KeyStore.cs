using System.Xml.Linq;
using Microsoft.AspNetCore.DataProtection.Repositories;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Toepan.Api.Store.Tables;

namespace Toepan.Api.Store;

/// <summary>
/// Keeps the data protection keys in the store: one backup, and every node reads the same cookies. It is made while the service is put
/// together, before the store can be reached, so it looks for the store only when asked for keys.
/// </summary>
public sealed class KeyStore(IServiceProvider services) : IXmlRepository
{
    private IDbContextFactory<ProgrammeDb> Contexts => services.GetRequiredService<IDbContextFactory<ProgrammeDb>>();

    public IReadOnlyCollection<XElement> GetAllElements()
    {
        using var db = Contexts.CreateDbContext();
        return [.. db.Set<DataProtectionKeyRow>().AsNoTracking().OrderBy(row => row.Id).Select(row => row.Xml).AsEnumerable().Select(XElement.Parse)];
    }

    public void StoreElement(XElement element, string friendlyName)
    {
        using var db = Contexts.CreateDbContext();
        db.Add(new DataProtectionKeyRow { Name = friendlyName, Xml = element.ToString(SaveOptions.DisableFormatting) });
        db.SaveChanges();
    }
}
