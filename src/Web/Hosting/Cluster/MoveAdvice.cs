namespace Toepan.Web.Hosting.Cluster;

/// <summary>How to move a cluster to another major version of PostgreSQL, which never happens by itself.</summary>
internal static class MoveAdvice
{
    public static string Text(ClusterFolder folder, ClusterUser user, string version, PostgresBinaries installed)
    {
        var run = user.Name is null ? "" : $"runuser -u {user.Name} -- ";
        return $"""
            The data in {folder.Data} was written by PostgreSQL {version}; installed here is PostgreSQL {installed.Major}. Nothing was changed.
            Either install PostgreSQL {version} (apt-get install postgresql-{version}) and start again, or, with both versions installed and the service stopped, move the data:
                cd {folder.Root} && export PGPASSWORD=$(cat password)
                mv pgdata pgdata-{version}
                {run}{installed["initdb"]} -D {folder.Data} -U {PrivateCluster.Owner} --auth=scram-sha-256 --pwfile={folder.Password} -E UTF8 --locale=C.UTF-8 --data-checksums
                {run}{installed["pg_upgrade"]} -b /usr/lib/postgresql/{version}/bin -B {installed.Folder} -d {folder.Root}/pgdata-{version} -D {folder.Data} -U {PrivateCluster.Owner} -s /tmp
                echo "include_if_exists 'toepan.conf'" >> {folder.Data}/postgresql.conf
            and start again. Keep pgdata-{version} until the service has been seen to run.
            """;
    }
}
